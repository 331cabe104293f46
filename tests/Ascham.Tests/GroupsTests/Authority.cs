namespace Ascham.Tests.GroupsTests;

using System.Globalization;

/// <summary>Reads the published tables of tests/authorities that these tests share.</summary>
static class Authority
{
    public static List<(double A1, double A2, double B1, double B2)> Paired() =>
        [.. Rows("hotelling/paired-n12.csv").Select(v => (v[0], v[1], v[2], v[3]))];

    public static List<(int Group, double V1, double V2)> Clinic() =>
        [.. Rows("equivalence/clinic.csv").Select(v => ((int)v[1], v[2], v[3]))];

    public static IEnumerable<double[]> Rows(string file) =>
        File.ReadLines(House.Path($"tests/authorities/{file}")).Where(l => !l.StartsWith('#')).Skip(1)
            .Select(line => line.Split(',').Select(t => double.Parse(t, CultureInfo.InvariantCulture)).ToArray());
}
