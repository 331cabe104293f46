namespace Ascham.Tests.RecordsTests;

using System.Text;
using Xunit;

/// <summary>Each bad setup, and the whole sentence its owner gets. The first two texts say what is changed in the example.</summary>
public class BadSetupTests
{
    [Theory]
    [InlineData("\"62 lb\"", "\"62lb\"", "setup.json, line 4, column 27 (bow.peak_weight): \"62lb\" is not a number, a space and a unit; expected a force such as \"62 lbf\" (units: N, lbf, lb, kgf).")]
    [InlineData("\"62 lb\"", "\"62 pounds\"", "setup.json, line 4, column 27 (bow.peak_weight): \"62 pounds\" has no unit known here; expected a force such as \"62 lbf\" (units: N, lbf, lb, kgf).")]
    [InlineData("\"62 lb\"", "\"heavy lb\"", "setup.json, line 4, column 27 (bow.peak_weight): \"heavy lb\" is not a number; expected a force such as \"62 lbf\" (units: N, lbf, lb, kgf).")]
    [InlineData("\"62 lb\"", "\"heavy\"", "setup.json, line 4, column 27 (bow.peak_weight): \"heavy\" has no number; expected a force such as \"62 lbf\" (units: N, lbf, lb, kgf).")]
    [InlineData("\"62 lb\"", "\"62,5 lb\"", "setup.json, line 4, column 27 (bow.peak_weight): \"62,5 lb\" has a decimal comma; expected a force such as \"62 lbf\" (units: N, lbf, lb, kgf), with a decimal point.")]
    [InlineData("\"62 lb\"", "\"620 lb\"", "setup.json, line 4, column 27 (bow.peak_weight): \"620 lb\" is out of range; expected pounds-force above 0, up to 225.")]
    [InlineData("\"62 lb\"", "\"NaN lb\"", "setup.json, line 4, column 27 (bow.peak_weight): \"NaN lb\" is not a finite number; expected a force such as \"62 lbf\" (units: N, lbf, lb, kgf).")]
    [InlineData("\"62 lb\"", "62", "setup.json, line 4, column 27 (bow.peak_weight): \"62\" is not a text in quotes; expected a force such as \"62 lbf\".")]
    [InlineData("\"62 lb\"", "null", "setup.json, line 4, column 27 (bow.peak_weight): \"null\" is not a text in quotes; expected a force such as \"62 lbf\".")]
    [InlineData("\"62 lb\"", "[1, 2]", "setup.json, line 4, column 27 (bow.peak_weight): \"[1, 2]\" is not a text in quotes; expected a force such as \"62 lbf\".")]
    [InlineData("\"peak_weight\"", "\"peek_weight\"", "setup.json, line 4, column 12 (bow.peek_weight): key \"peek_weight\" is not known; did you mean \"peak_weight\"?")]
    [InlineData("\"peak_weight\": \"62 lb\", ", "", "setup.json, line 4, column 10 (bow): \"bow\" lacks \"peak_weight\".")]
    [InlineData("\"hand\": \"left\"", "\"hand\": \"sinister\"", "setup.json, line 4, column 128 (bow.hand): \"sinister\" is none of the words known here; expected right or left.")]
    [InlineData("\"tape_per_pin_travel\": 1,", "", "setup.json, line 6, column 12 (sight): \"sight\" lacks \"tape_per_pin_travel\".")]
    [InlineData("\"tape_per_pin_travel\": 1,", "\"tape_per_pin_travel\": \"1\",", "setup.json, line 9, column 28 (sight.tape_per_pin_travel): \"1\" is not a number; expected a number without quotes, above 0, up to 1000.")]
    [InlineData("\"tape_per_pin_travel\": 1,", "\"tape_per_pin_travel\": 0,", "setup.json, line 9, column 28 (sight.tape_per_pin_travel): \"0\" is out of range; expected a number without quotes, above 0, up to 1000.")]
    [InlineData("\"tape_per_pin_travel\": 1,", "\"tape_per_pin_travel\": 1e999,", "setup.json, line 9, column 28 (sight.tape_per_pin_travel): \"1e999\" is not a finite number; expected a number without quotes, above 0, up to 1000.")]
    [InlineData("\"down\"", "\"left\"", "setup.json, line 10, column 27 (sight.position_increases): \"left\" is none of the words known here; expected down or up.")]
    [InlineData("\"peep_to_pin\": \"34 in\",", "", "setup.json, line 6, column 12 (sight): \"sight\" lacks \"peep_to_pin\".")]
    [InlineData("\"drag_constant\": \"0.0025 1/m\"", "\"drag_constant\": \"0.0025 1/m\", \"drag_area\": \"60 mm2\"", "setup.json, line 5, column 110 (arrow.drag_area): \"drag_area\" and \"drag_constant\" are both given, and may contradict each other; expected one of them.")]
    [InlineData("\"412 gr\"", "\"412 grains\"", "setup.json, line 5, column 22 (arrow.mass): \"412 grains\" has no unit known here; expected a mass such as \"412 gr\" (units: g, gr, kg).")]
    [InlineData("\"80 yd\"", "\"0 yd\"", "setup.json, line 15, column 39 (range.longest_safe_distance): \"0 yd\" is out of range; expected yards above 0, up to 1094.")]
    [InlineData("\"earth bank\"", "\" \"", "setup.json, line 15, column 60 (range.backstop): \" \" is blank; expected a text.")]
    [InlineData("\"relative_humidity\": \"50 %\"", "\"relative_humidity\": \"150 %\"", "setup.json, line 14, column 83 (air.relative_humidity): \"150 %\" is out of range; expected percent from 0 to 100.")]
    [InlineData("\"name\": \"field bow\",", "", "setup.json, line 1, column 1: the setup lacks \"name\".")]
    [InlineData("\"range\":", "\"rnge\":", "setup.json, line 15, column 3 (rnge): key \"rnge\" is not known; did you mean \"range\"?")]
    [InlineData("\"note\":", "\"weather_forecast\":", "setup.json, line 16, column 3 (weather_forecast): key \"weather_forecast\" is not known; expected name, bow, arrow, sight, range, archer, air or note.")]
    [InlineData("\"note\":", "\"name\":", "setup.json, line 16, column 3 (name): key \"name\" was already given on line 3; expected each key once.")]
    [InlineData("\"note\": \"for the tests\"", "\"note\": 5", "setup.json, line 16, column 11 (note): \"5\" is not a text in quotes; expected a text in quotes.")]
    [InlineData("\"archer\": { \"name\": \"Robin\", \"expected_dispersion\": \"1.2 mrad\" }", "\"archer\": \"Robin\"", "setup.json, line 13, column 13 (archer): \"Robin\" is not a section; expected keys and values in braces, { ... }.")]
    [InlineData("\"name\": \"field bow\",", "\"name\" \"field bow\",", "setup.json, line 3, column 10: the JSON cannot be read on from here; expected keys and texts in double quotes, a colon after each key, a comma between entries, every brace closed.")]
    [InlineData("\"range\": {", "", "setup.json, line 15, column 109: the JSON cannot be read on from here; expected keys and texts in double quotes, a colon after each key, a comma between entries, every brace closed.")]
    [InlineData("field bow", "field\0bow", "setup.json, line 3, column 17: there is a NUL byte, as in UTF-16 or binary files; expected text saved as UTF-8.")]
    public void Setups(string good, string bad, string message)
    {
        Assert.Contains(good, Example.SetupText, StringComparison.Ordinal);
        Assert.Equal(message, Example.ErrorOf("setup.json", Example.SetupText.Replace(good, bad, StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("[]", "setup.json, line 1, column 1: the file does not begin with a brace; expected { and the keys of the setup.")]
    [InlineData("{}", "setup.json, line 1, column 1: the setup lacks \"name\" and \"bow\" and \"arrow\" and \"sight\" and \"range\".")]
    [InlineData("// only a comment\n", "setup.json, line 2, column 1: the JSON cannot be read on from here; expected keys and texts in double quotes, a colon after each key, a comma between entries, every brace closed.")]
    [InlineData("{} {}", "setup.json, line 1, column 4: the JSON cannot be read on from here; expected keys and texts in double quotes, a colon after each key, a comma between entries, every brace closed.")]
    public void Whole_files(string text, string message) => Assert.Equal(message, Example.ErrorOf("setup.json", text));

    [Fact]
    public void Columns_count_characters_not_bytes() =>
        Assert.Equal("setup.json, line 1, column 26 (nöte): key \"nöte\" is not known; did you mean \"note\"?", Example.ErrorOf("setup.json", "{ \"name\": \"größte Höhe\", \"nöte\": \"\" }"));

    [Fact]
    public void Columns_count_characters_also_where_the_JSON_breaks() =>
        Assert.StartsWith("setup.json, line 2, column 8: the JSON cannot be read on", Example.ErrorOf("setup.json", "{\n\"näme\" \"a\" }"), StringComparison.Ordinal);

    [Fact]
    public void Another_encoding_is_refused_with_its_place()
    {
        byte[] latin = Encoding.Latin1.GetBytes(Example.SetupText.Replace("earth bank", "Böschung", StringComparison.Ordinal));
        Assert.Equal("setup.json, line 15, column 62: there are bytes that are not UTF-8; expected text saved as UTF-8.", Example.ErrorOf("setup.json", latin).Message);
    }

    [Fact]
    public void A_file_too_long_for_a_setup_is_refused() =>
        Assert.EndsWith("setup.json: the file is too long for a setup; expected at most 1048576 bytes.", Example.ErrorOf("setup.json", new string(' ', 1 << 20) + "{}"), StringComparison.Ordinal);
}
