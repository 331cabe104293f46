namespace Ascham.Notebooks.Tests;

using Xunit;

public class LookTests
{
    // W3C, Web Content Accessibility Guidelines 2.1 (2018), "relative luminance" and "contrast ratio"; criterion 1.4.11 asks for 3:1.
    static double Luminance(string colour)
    {
        double Channel(int at)
        {
            double c = Convert.ToByte(colour.Substring(at, 2), 16) / 255.0;
            return c <= 0.03928 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
        }

        return (0.2126 * Channel(1)) + (0.7152 * Channel(3)) + (0.0722 * Channel(5));
    }

    static double Contrast(string a, string b)
    {
        double x = Luminance(a), y = Luminance(b);
        return (Math.Max(x, y) + 0.05) / (Math.Min(x, y) + 0.05);
    }

    [Fact] // the extreme pair of the same guidelines: black on white is 21:1
    public void Contrast_of_black_and_white_is_twenty_one() => Assert.Equal(21, Contrast("#000000", "#ffffff"), 1e-9);

    [Theory, InlineData("#ffffff"), InlineData("#161616")]
    public void Series_and_lines_stand_out_on_light_and_dark_pages(string page) =>
        Assert.All(Look.Series.Select(s => s.Colour).Append(Look.Grey), c => Assert.True(Contrast(c, page) >= 3, $"{c} on {page}: {Contrast(c, page):F2}"));

    [Fact]
    public void No_two_series_share_marker_or_dash()
    {
        Assert.Equal(Look.Series.Count, Look.Series.Select(s => s.Symbol).Distinct().Count());
        Assert.Equal(Look.Series.Count, Look.Series.Select(s => s.Dash).Distinct().Count());
    }

    [Fact] // M. Okabe, K. Ito, Color Universal Design, 2008: blue (0,114,178), vermilion (213,94,0), bluish green (0,158,115), reddish purple (204,121,167)
    public void Colours_are_those_published() => Assert.Equal(
        ["rgba(0,114,178,0.2)", "rgba(213,94,0,0.2)", "rgba(0,158,115,0.2)", "rgba(204,121,167,0.2)"], Look.Series.Select(s => s.Faint));
}
