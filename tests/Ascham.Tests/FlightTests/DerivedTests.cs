namespace Ascham.Tests.FlightTests;

using Ascham.Flight;
using Ascham.Tests.AirTests;
using Xunit;

/// <summary>Derived, independent checks: tables computed elsewhere from the same equations by other means. None is published.</summary>
public class DerivedTests
{
    const double Degree = Math.PI / 180;

    static readonly AuthorityFile Wind = new("flight-wind-derived.csv");
    static readonly AuthorityFile Cant = new("flight-cant-derived.csv");
    static readonly AuthorityFile Inclined = new("flight-inclined-derived.csv");
    static readonly PointMassSi Still = new(0.0012, 9.80665, 0, 0, 0);

    public static TheoryData<int> WindRows => AuthorityFile.Rows("flight-wind-derived.csv");

    public static TheoryData<int> CantRows => AuthorityFile.Rows("flight-cant-derived.csv");

    public static TheoryData<int> InclinedRows => AuthorityFile.Rows("flight-inclined-derived.csv");

    [Theory, MemberData(nameof(WindRows))]
    public void Wind_moves_the_impact_as_tabulated(int row)
    {
        double x = Wind.Value(row, "x_m");
        var launch = new LaunchSi(85, Sighted(Still, x, 0));
        StateSi blown = On(Still with { WindX = Wind.Value(row, "tail_m_s"), WindZ = Wind.Value(row, "from_left_m_s") }, launch, x);
        Wind.Cell(row, "right_mm")?.Matches(1e3 * blown.Z);
        Wind.Cell(row, "up_mm")?.Matches(1e3 * blown.Y);
    }

    [Theory, MemberData(nameof(CantRows))]
    public void Cant_turns_the_launch_about_the_line_as_tabulated(int row)
    {
        double x = Cant.Value(row, "x_m"), e = Sighted(Still, x, 0), cant = Cant.Value(row, "cant_deg") * Degree;
        var launch = new LaunchSi(
            85, Math.Asin(Math.Sin(e) * Math.Cos(cant)), Math.Atan2(Math.Sin(e) * Math.Sin(cant), Math.Cos(e)));
        StateSi canted = On(Still, launch, x);
        Cant.Cell(row, "right_mm")!.Matches(1e3 * canted.Z);
        Cant.Cell(row, "up_mm")!.Matches(1e3 * canted.Y);
    }

    [Theory, MemberData(nameof(InclinedRows))]
    public void Sighting_along_a_slope_takes_the_angle_tabulated(int row)
    {
        double line = Inclined.Value(row, "line_deg") * Degree;
        var mass = Still with { K = Inclined.Value(row, "k_per_m") };
        double angle = Sighted(mass, Inclined.Value(row, "slant_m"), line) - line;
        Inclined.Cell(row, "angle_deg")!.Matches(angle / Degree);
    }

    // Newton on the height above the line, with the derivative from the flight itself.
    static double Sighted(PointMassSi mass, double slant, double line)
    {
        double elevation = line;
        for (int i = 0; i < 8; i++)
        {
            Assert.Equal(Outcome.Met, mass.FlyWithSlope(new(85, elevation), slant, line, out _, out double above, out double slope));
            elevation -= above / slope;
        }

        return elevation;
    }

    static StateSi On(PointMassSi mass, LaunchSi launch, double x)
    {
        Assert.Equal(Outcome.Met, mass.Fly(launch, x, 0, out StateSi state, out _));
        return state;
    }
}
