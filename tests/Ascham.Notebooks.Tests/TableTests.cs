namespace Ascham.Notebooks.Tests;

using System.Globalization;
using System.Xml.Linq;
using Ascham.Quantities;
using Deedle;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

public class TableTests
{
    static readonly Table Small = Table.From(
        [("60 yd", 1.26, "low"), ("80 yd", -10.5, "")], ("distance", r => r.Item1, 0), ("error (mm)", r => r.Item2, 1), ("note", r => r.Item3, 0));

    [Fact]
    public void Text_is_set_in_columns_with_numbers_flush_right() => Assert.Equal(
        "distance  error (mm)  note\n--------  ----------  ----\n60 yd            1.3  low\n80 yd          -10.5",
        Small.ToString());

    [Fact]
    public void Html_is_well_formed_with_numbers_flush_right()
    {
        var html = XElement.Parse(Small.ToHtml());
        string[] styles = [.. html.Descendants("td").Take(3).Select(td => td.Attribute("style")!.Value)];
        Assert.Equal(["text-align:left", "text-align:right", "text-align:left"], styles);
        Assert.All(html.Descendants("th"), th => Assert.Equal("col", th.Attribute("scope")!.Value));
    }

    [Fact]
    public void Html_is_escaped_everywhere()
    {
        var html = XElement.Parse((Table.From([Samples.Hostile], [[Samples.Hostile]]) with { Caption = Samples.Hostile }).ToHtml());
        Assert.Empty(html.Descendants("script"));
        Assert.All([html.Descendants("th").Single(), html.Descendants("td").Single(), html.Descendants("caption").Single()], e => Assert.Equal(Samples.Hostile, e.Value));
    }

    [Fact]
    public void Long_tables_are_counted_beyond_the_rows_shown()
    {
        var html = XElement.Parse(Table.From(["n"], Enumerable.Range(0, 30).Select(i => (object?[])[i])).ToHtml(10));
        Assert.Equal(10, html.Descendants("td").Count());
        Assert.Equal("and 20 more rows", html.Element("p")!.Value);
    }

    [Fact]
    public void Rows_of_another_length_are_refused() => Assert.Contains(
        "row 2 has 1", Assert.Throws<ArgumentException>(() => Table.From(["a", "b"], [[1, 2], [3]])).Message, StringComparison.Ordinal);

    [Fact]
    public void Estimates_show_value_interval_level_and_count()
    {
        var table = Table.From([("slide", Samples.Millimetres(1.5, 0.2))], LengthUnit.Millimeter, 2);
        Assert.Equal(["", "value (mm)", "low (mm)", "high (mm)", "interval", "n"], table.Headers);
        Assert.Equal(["slide", "1.50", "1.17", "1.83", "90 %", "12"], table.Rows[0]);
        Assert.Equal(table.ToString(), Samples.Millimetres(1.5, 0.2).Show("slide", LengthUnit.Millimeter, 2).ToString());
    }

    [Fact]
    public void Text_is_the_same_in_any_culture()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal("1.524 mm", NotebookDisplay.Text(1.524.Millimetres));
            Assert.Equal("1.50 mm (90 %: 1.17 to 1.83 mm)", NotebookDisplay.Text(Samples.Millimetres(1.5, 0.2)));
            Assert.Equal(["1.5"], Table.From(["a"], [[1.5]]).Rows[0]);
            Assert.Contains("1.5", Table.From(["a"], [[1.5m]]).ToString(), StringComparison.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory] // two digits of the standard error are kept
    [InlineData(12.3456, 0.0123, "12.346 (90 %: 12.000 to 13.000)")]
    [InlineData(12.3456, 1.23, "12.3 (90 %: 12.0 to 13.0)")]
    [InlineData(12.3456, 123, "12 (90 %: 12 to 13)")]
    public void Estimates_show_the_digits_that_are_known(double value, double error, string expected) =>
        Assert.Equal(expected, NotebookDisplay.Text(new Estimate<double>(value, error, 12, 13, 0.90, 5, "invented")));

    [Fact]
    public void Values_of_types_known_late_show_as_those_known_early()
    {
        Assert.Equal(NotebookDisplay.Text(Samples.Inches(1, 0.1)), NotebookDisplay.TextOf(Samples.Inches(1, 0.1)));
        Assert.Equal("1.20 (90 %: 1.03 to 1.37)", NotebookDisplay.TextOf(new Estimate<double>(1.2, 0.1, 1.03, 1.37, 0.90, 12, "invented")));
        Assert.Equal("278 ft/s", NotebookDisplay.TextOf(278.FeetPerSecond));
        Assert.Equal("1.5", NotebookDisplay.TextOf(1.5));
    }

    [Fact]
    public void Negative_zero_is_zero() => Assert.Equal("0.0", NumberText.Fixed(-0.04, 1));

    [Fact]
    public void Shots_survive_the_way_into_a_frame_and_back()
    {
        var shots = Samples.Shots(20, 60);
        var frame = ShotFrame.From(shots, LengthUnit.Yard, LengthUnit.Inch);
        Assert.Equal(["session", "distance_yd", "shot", "right_in", "up_in", "missed", "called", "arrow", "point_type", "fletched", "hold_s", "group", "note"], frame.ColumnKeys);
        Assert.Equal(shots.Count, frame.RowCount);
        foreach (int key in frame.RowKeys)
        {
            var up = frame.GetColumn<double>("up_in").TryGet(key);
            Assert.Equal(shots[key].Impact is not null, up.HasValue);
            Assert.Equal(shots[key].Impact?.Up.Inches ?? 0, up.ValueOrDefault, 1e-12);
            Assert.Equal(shots[key].Distance.Yards, frame.GetColumn<double>("distance_yd")[key], 1e-12);
            Assert.Equal(shots[key].Called, frame.GetColumn<bool>("called")[key]);
        }

        // filtered in the frame, the row keys lead back to the shots
        var far = frame.Where(row => row.Value.GetAs<double>("distance_yd") > 50);
        Assert.Equal(shots.Where(s => s.Distance > 50.Yards), far.RowKeys.Select(k => shots[k]));
        Assert.Equal(shots.Where(s => s.Impact is not null).Average(s => s.Impact!.Value.Up.Inches), frame.GetColumn<double>("up_in").Mean(), 1e-12);
    }

    [Fact]
    public void A_frame_survives_the_way_through_a_file()
    {
        var frame = ShotFrame.From(Samples.Shots(20, 60), LengthUnit.Meter, LengthUnit.Millimeter);
        string path = Path.Combine(AppContext.BaseDirectory, "shots-through-a-file.csv");
        frame.SaveCsv(path, includeRowKeys: false, separator: ',', culture: CultureInfo.InvariantCulture);
        var back = Frame.ReadCsv(path, hasHeaders: true, inferTypes: true, schema: "distance_m=float,right_mm=float,up_mm=float", separators: ",", culture: "");
        Assert.Equal(frame.GetColumn<double>("up_mm").Mean(), back.GetColumn<double>("up_mm").Mean(), 1e-9);
        Assert.Equal(frame.GetColumn<double>("up_mm").ValueCount, back.GetColumn<double>("up_mm").ValueCount);
    }

    [Fact]
    public void Frames_show_their_first_rows_and_leave_missing_cells_empty()
    {
        var shots = Samples.Shots(20, 60);
        var table = shots.Show(LengthUnit.Yard, LengthUnit.Inch, rows: 12);
        Assert.Equal(["", "session", "distance_yd", "shot", "right_in", "up_in", "missed", "called", "arrow"], table.Headers);
        Assert.Equal("", table.Caption);
        Assert.Equal(["11", "evening", "60", "12", "", "", "low", "no", "6"], table.Rows[11]);
        var frame = ShotFrame.From(shots, LengthUnit.Yard, LengthUnit.Inch);
        Assert.Equal("First 3 of 12 rows", NotebookDisplay.Show(frame, 3).Caption);
        Assert.True(NotebookDisplay.Show(frame).ToHtml().Length < 20_000);
    }
}
