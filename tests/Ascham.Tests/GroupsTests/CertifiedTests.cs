namespace Ascham.Tests.GroupsTests;

using System.Globalization;
using Ascham.Groups;
using Ascham.Numerics;
using UnitsNet;
using Xunit;

/// <summary>Mean and standard deviation against the certified values of NIST StRD, digits asked for per set.</summary>
public class CertifiedTests
{
    // Certified values: NIST StRD, univariate summary statistics, page of each set.
    // NumAcc3 and NumAcc4 cannot do better in double precision: their data do not survive conversion to binary with more digits.
    [Theory]
    [InlineData("NumAcc1", 10000002, 1, 15, 15)]
    [InlineData("NumAcc2", 1.2, 0.1, 15, 14)]
    [InlineData("NumAcc3", 1000000.2, 0.1, 15, 9)]
    [InlineData("NumAcc4", 10000000.2, 0.1, 15, 8)]
    [InlineData("Michelso", 299.852400000000, 0.0790105478190518, 15, 13)]
    [InlineData("Mavro", 2.00185600000000, 0.000429123454003053, 15, 12)]
    [InlineData("Lew", -177.435000000000, 277.332168044316, 14, 14)]
    [InlineData("Lottery", 518.958715596330, 291.699727470969, 14, 14)]
    [InlineData("PiDigits", 4.53480000000000, 2.86733906028871, 14, 14)]
    public void Mean_and_sd_agree_with_the_certified_values(string set, double mean, double sd, int meanDigits, int sdDigits)
    {
        Group group = Group.Of(Read(set).Select(y => new Impact(Length.Zero, Length.FromMeters(y))).ToArray());

        Assert.True(Digits(group.Centre(Axis.Vertical, 0.9).Value.Meters, mean) >= meanDigits);
        Assert.True(Digits(group.Dispersion(Axis.Vertical, 0.9).Sample.Meters, sd) >= sdDigits);
    }

    // NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.5.2: ZARR13.DAT, n 195, mean 9.261460, sd 0.022789, 95 % limits 9.258242 and 9.264679.
    [Fact]
    public void Student_interval_agrees_with_the_handbook_example()
    {
        double half = Quantiles.StudentT(194, 0.95) * 0.022789 / Math.Sqrt(195);
        new Checks.Printed("9.258242", "NIST/SEMATECH 1.3.5.2").Matches(9.261460 - half, 2); // mean and sd are themselves rounded to the sixth decimal
        new Checks.Printed("9.264679", "NIST/SEMATECH 1.3.5.2").Matches(9.261460 + half, 2); // likewise
    }

    static double[] Read(string set) =>
        [.. File.ReadLines(House.Path($"tests/authorities/strd/univariate/{set}.csv")).Skip(2).Select(line => double.Parse(line, CultureInfo.InvariantCulture))];

    // Log relative error, as StRD asks, capped at what a double can show.
    static double Digits(double actual, double certified) =>
        actual == certified ? 15.9 : -Math.Log10(Math.Abs(actual - certified) / Math.Abs(certified));
}
