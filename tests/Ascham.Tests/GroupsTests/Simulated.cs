namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using CsCheck;
using UnitsNet;

/// <summary>Made-up impacts and shots: from a fixed seed for coverage, from CsCheck for relations.</summary>
sealed class Simulated(int seed)
{
    readonly Random random = new(seed);

    /// <summary>Three to twelve impacts within 2 m of the aim point, recorded to a tenth of a millimetre, not all on or near one line.</summary>
    public static Gen<Impact[]> Impacts { get; } =
        Gen.Select(Gen.Int[-20_000, 20_000], Gen.Int[-20_000, 20_000], (right, up) => At(right / 1e4, up / 1e4)).Array[3, 12]
            .Where(a => Ascham.Groups.Group.Of(a) is var g && g.TryCentre(0.5, out var c, out _) && c.Ellipse is { } e && e.SemiMinor > e.SemiMajor / 1e3);

    public static Impact At(double right, double up) => new(Length.FromMeters(right), Length.FromMeters(up));

    public static Impact[] Of(params (double Right, double Up)[] points) => [.. points.Select(p => At(p.Right, p.Up))];

    public static Shot Shot(int number, double right, double up, double distance = 20, string session = "spring", bool called = false) => new()
    {
        Session = session,
        Distance = Length.FromMeters(distance),
        Number = number,
        Impact = At(right, up),
        Called = called,
    };

    public static Shot Lost(int number, Miss miss, double distance = 20, string session = "spring", bool called = false) => new()
    {
        Session = session,
        Distance = Length.FromMeters(distance),
        Number = number,
        Missed = miss,
        Called = called,
    };

    /// <summary>A number between 0 and 1.</summary>
    public double Uniform() => random.NextDouble();

    /// <summary>A standard normal number (Box and Muller).</summary>
    public double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    /// <summary>A group about the aim point with sigma 1 m across and <paramref name="stretch"/> m up.</summary>
    public Group Group(int n, double stretch) =>
        Ascham.Groups.Group.Of(Enumerable.Range(0, n).Select(_ => At(Normal(), stretch * Normal())).ToArray());

    /// <summary>Stations at 50 m, sigma 1 mrad, whose butt ends a given number of sigmas below the aim point.</summary>
    public List<Shot> Stations(int stations, int n, double edge)
    {
        const double distance = 50, sigma = 1e-3 * distance;
        List<Shot> shots = [];
        for (int i = 0; i < stations * n; i++)
        {
            double up = Normal(), right = Normal();
            string session = $"station {i / n}";
            shots.Add(up < edge ? Lost(i + 1, Miss.Low, distance, session) : Shot(i + 1, sigma * right, sigma * up, distance, session));
        }

        return shots;
    }
}
