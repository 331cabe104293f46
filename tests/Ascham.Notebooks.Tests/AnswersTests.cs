namespace Ascham.Notebooks.Tests;

using System.Text.Json.Nodes;
using System.Xml.Linq;
using Ascham.Quantities;
using CsCheck;
using UnitsNet;
using UnitsNet.Units;
using Xunit;
using static Ascham.Notebooks.Answers;

[Collection("process-wide state")]
public class AnswersTests : IDisposable
{
    public AnswersTests() => NotebookHost.StartNotebook();

    public void Dispose()
    {
        NotebookHost.IsRunner = false;
        Reset();
        GC.SuppressFinalize(this);
    }

    static JsonObject Last => JsonNode.Parse(ToJson())!.AsArray()[^1]!.AsObject();

    [Fact]
    public void An_estimate_leaves_value_unit_interval_and_level()
    {
        Answer("slide_mm", new Estimate<Length>(1.5.Millimetres, 0.2.Millimetres, 1.2.Millimetres, 1.8.Millimetres, 0.90, 24, "invented"), LengthUnit.Millimeter, probability: 0.97);
        Assert.Equal(["name", "value", "unit", "low", "high", "level", "probability"], Last.Select(m => m.Key));
        Assert.Equal("mm", (string)Last["unit"]!);
        Assert.Equal(1.5, (double)Last["value"]!, 1e-12);
        Assert.Equal(1.2, (double)Last["low"]!, 1e-12);
        Assert.Equal(1.8, (double)Last["high"]!, 1e-12);
        Assert.Equal(0.90, (double)Last["level"]!);
        Assert.Equal(0.97, (double)Last["probability"]!);
    }

    [Fact]
    public void A_unit_left_out_is_the_one_that_the_value_carries()
    {
        Answer("slide", Samples.Inches(1, 0.1));
        Assert.Equal("in", (string)Last["unit"]!);
    }

    [Fact]
    public void Words_counts_numbers_and_quantities_leave_what_applies()
    {
        Answer("verdict", "cannot tell", 0.5);
        Assert.Equal("""{"name":"verdict","probability":0.5,"text":"cannot tell"}""", Last.ToJsonString());
        Answer("n_shots", 24, "arrows");
        Assert.Equal("""{"name":"n_shots","value":24,"unit":"arrows"}""", Last.ToJsonString());
        Answer("ratio", 0.25);
        Assert.Equal("""{"name":"ratio","value":0.25}""", Last.ToJsonString());
        Answer("corrected_mark_18.288m", 0.02.Metres, LengthUnit.Millimeter);
        Assert.Equal("""{"name":"corrected_mark_18.288m","value":20,"unit":"mm"}""", Last.ToJsonString());
        Answer("spread", new Estimate<double>(1.25, 0.1, 1, 1.5, 0.9, 5, "invented"), "mrad");
        Assert.Equal("""{"name":"spread","value":1.25,"unit":"mrad","low":1,"high":1.5,"level":0.9}""", Last.ToJsonString());
    }

    [Fact]
    public void An_end_that_is_not_bounded_is_left_out_and_said_in_words()
    {
        var answer = Answer("sigma", new Estimate<double>(1, 0.5, 0.4, double.PositiveInfinity, 0.9, 2, "invented"));
        Assert.Equal(["name", "value", "low", "level"], Last.Select(m => m.Key));
        Assert.Equal("sigma: 1.00 (90 %: 0.40 to unbounded)", answer.ToString());
    }

    [Fact]
    public void Numbers_read_back_to_the_same_double() => Gen.Double[-1e9, 1e9].Sample(value =>
    {
        Reset();
        Answer("a", value);
        return (double)Last["value"]! == value;
    }, threads: 1, iter: 500, seed: "0000KOIPe2Q3");

    [Theory, InlineData("Slide"), InlineData("slide mm"), InlineData(""), InlineData("1st"), InlineData("slide-mm"), InlineData("slide."), InlineData("mark_.5"), InlineData("a\n")]
    public void Names_not_well_formed_are_refused(string name)
    {
        var error = Assert.Throws<ArgumentException>(() => Answer(name, 1));
        Assert.Contains("lower-case letters, digits and underscores", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_that_ends_in_another_unit_is_refused()
    {
        var error = Assert.Throws<ArgumentException>(() => Answer("slide_mm", Samples.Inches(1, 0.1)));
        Assert.Contains("\"slide_mm\" ends in mm, but the answer is written in in", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_second_declaration_is_an_error_under_a_runner_and_replaces_the_first_in_a_front_end()
    {
        Answer("a", 1);
        Answer("a", 2);
        Assert.Equal(2, Assert.Single(All).Value);
        NotebookHost.IsRunner = true;
        Assert.Contains("declared twice", Assert.Throws<ArgumentException>(() => Answer("a", 3)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_not_a_number_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Answer("a", double.NaN));
        var error = Assert.Throws<ArgumentException>(() => Answer("a", new Estimate<double>(double.NaN, 1, 0, 1, 0.9, 3, "invented")));
        Assert.Contains("\"cannot tell\"", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Answer("a", new Estimate<double>(1, 1, double.NaN, 2, 0.9, 3, "invented")));
        Assert.Throws<ArgumentException>(() => Answer("a", new Estimate<double>(1, 1, 3, 2, 0.9, 3, "invented")));
        Assert.Throws<ArgumentOutOfRangeException>(() => Answer("a", "yes", 1.01));
        Assert.Throws<ArgumentOutOfRangeException>(() => Answer("a", "yes", double.NaN));
        Assert.Throws<ArgumentException>(() => Answer("a", ""));
        Assert.Empty(All);
    }

    [Fact]
    public void Html_is_well_formed_and_escaped()
    {
        var html = XElement.Parse(Answer("verdict", Samples.Hostile, 0.9).ToHtml());
        Assert.Equal(Samples.Hostile, html.Element("strong")!.Value);
        Assert.Equal($"verdict: {Samples.Hostile}, probability 0.900", html.Value);
    }
}
