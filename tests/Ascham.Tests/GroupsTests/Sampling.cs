namespace Ascham.Tests.GroupsTests;

using System.Globalization;
using Ascham.Groups;
using Ascham.Quantities;
using UnitsNet;

/// <summary>How simulated arrows fall in the study of intervals: sigma across is 1, sigma up is the stretch, and one arrow may be wild.</summary>
/// <param name="Stretch">Sigma up over sigma across.</param>
/// <param name="Wild">How far the wild arrow is thrown off, in a random direction, beside its scatter; zero for none.</param>
sealed record Sampling(double Stretch, double Wild)
{
    internal static Sampling[] All { get; } = [new(1, 0), new(2, 0), new(1, 5), new(2, 5)];

    internal string Name => (Stretch == 1 ? "round" : "stretched") + (Wild > 0 ? ", one wild" : "");

    /// <summary>Sigma of both axes that pooling aims at.</summary>
    internal double BothAxes => Math.Sqrt((1 + (Stretch * Stretch)) / 2);

    /// <summary>A seed that differs from row to row.</summary>
    internal int Seed(int table, int n) => (1_000_000 * table) + (10_000 * n) + (100 * (int)Stretch) + (int)Wild;

    /// <summary>A group about a centre; the wild arrow, if any, takes any place in it.</summary>
    internal Group Group(Simulated simulated, int n, double right = 0, double up = 0, double scale = 1) =>
        Ascham.Groups.Group.Of(Impacts(simulated, n, right, up, scale));

    internal Impact[] Impacts(Simulated simulated, int n, double right = 0, double up = 0, double scale = 1)
    {
        double[] x = new double[n], y = new double[n];
        for (int i = 0; i < n; i++)
        {
            (x[i], y[i]) = (simulated.Normal(), Stretch * simulated.Normal());
        }

        if (Wild > 0)
        {
            var (sine, cosine) = Math.SinCos(2 * Math.PI * simulated.Uniform());
            int who = (int)(n * simulated.Uniform());
            (x[who], y[who]) = (x[who] + (Wild * cosine), y[who] + (Wild * sine));
        }

        return [.. x.Zip(y, (r, u) => Simulated.At(right + (scale * r), up + (scale * u)))];
    }
}

/// <summary>Counts, statement by statement, how often it was true; blank where it was never made.</summary>
sealed class Tally
{
    readonly Dictionary<string, (int Held, int Made)> counts = [];

    internal void Add(string statement, bool? held)
    {
        counts.TryGetValue(statement, out var count);
        counts[statement] = held is { } told ? (count.Held + (told ? 1 : 0), count.Made + 1) : count;
    }

    internal void Add(string statement, Estimate<Length>? estimate, double truth) => Add(statement, estimate is null ? null : Holds(estimate.Low.Meters, estimate.High.Meters, truth));

    internal void Add(string statement, Estimate<double>? estimate, double truth) => Add(statement, estimate is null ? null : Holds(estimate.Low, estimate.High, truth));

    internal IEnumerable<string> Statements => counts.Keys;

    internal double this[string statement] => counts[statement] is { Made: > 0 } count ? count.Held / (double)count.Made : double.NaN;

    internal string Cells() => string.Join(" | ", counts.Keys.Select(s => double.IsNaN(this[s]) ? "" : (100 * this[s]).ToString("F1", CultureInfo.InvariantCulture)));

    static bool Holds(double low, double high, double truth) => low <= truth && truth <= high;
}
