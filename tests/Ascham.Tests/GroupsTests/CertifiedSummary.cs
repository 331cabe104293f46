namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Tests.NumericsTests;
using UnitsNet;

/// <summary>A univariate set of NIST StRD through <see cref="Group"/>.</summary>
/// <param name="Set">Its name.</param>
/// <param name="Mean">Certified mean.</param>
/// <param name="Sd">Certified standard deviation.</param>
/// <param name="Known">Digits of the standard deviation that corrected two-pass sums in double precision are known to reach (NumPy).</param>
public sealed record CertifiedSummary(string Set, double Mean, double Sd, double Known)
{
    internal (double Mean, double Sd) Digits()
    {
        double[] values = [.. Certified.Rows($"univariate/{Set}").Select(r => Certified.Number(r[0]))];
        Group group = Group.Of(values.Select(y => new Impact(Length.Zero, Length.FromMeters(y))).ToArray());
        return (Certified.Digits(group.Centre(Axis.Vertical, 0.9).Value.Meters, Mean), Certified.Digits(group.Dispersion(Axis.Vertical, 0.9).Sample.Meters, Sd));
    }
}

/// <summary>A set of NIST StRD for the analysis of variance through <see cref="NumberedArrows"/>: groups are arrows, values heights.</summary>
/// <param name="Set">Its name.</param>
/// <param name="Known">Digits of F that double precision is known to reach (NumPy, the first value taken off before).</param>
public sealed record CertifiedVariance(string Set, double Known)
{
    internal static CertifiedVariance[] Sets { get; } =
    [
        new("SiRstv", 13.1), new("AtmWtAg", 10.2), new("SmLs01", 15.8), new("SmLs02", 15.5), new("SmLs04", 10.4), new("SmLs05", 10.2), new("SmLs07", 4.4), new("SmLs08", 4.2),
    ];

    internal (double F, double Residual) Digits()
    {
        string[][] rows = [.. Certified.Rows($"anova/{Set}")];
        var certified = Certified.Values("anova/certified", Set);
        Group group = Group.Of(rows.Select((row, i) => Simulated.Shot(i + 1, 0, Certified.Number(row[1])) with { Arrow = row[0], Hold = Duration.FromSeconds(row[0] == "1" ? 0 : 1) }));
        var (f, sd) = rows.DistinctBy(r => r[0]).Count() == 2 ? Slope(group) : Between(group);
        return (Certified.Digits(f, certified["F"]), Certified.Digits(sd, certified["residual_sd"]));
    }

    static (double F, double Sd) Between(Group group)
    {
        NumberedArrows<Length> fit = NumberedArrows.Of([group], Axis.Vertical, 0.9);
        return (fit.F, fit.Scatter.Sample.Meters);
    }

    static (double F, double Sd) Slope(Group group)
    {
        Trend<Length> trend = Trend.Of([group], Axis.Vertical, TrendAgainst.HoldTime, 0.9);
        double t = trend.Slope.Value / trend.Slope.StandardError;
        return (t * t, trend.Residual.Sample.Meters);
    }
}
