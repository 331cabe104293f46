namespace Ascham.Causes;

using Ascham.Groups;
using UnitsNet;

/// <summary>Shots with the wildest impacts pulled in toward their station's centre, so that one bad loose does not move a mean far.</summary>
/// <remarks>
/// Huber's pseudo-values: an impact farther than 2.8 sigma from its centre counts as lying at that distance, in its own direction. Of round normal impacts
/// 2 in 100 are touched. Nothing is dropped; how many were pulled is told. Missed arrows and called flyers stay as they are.
/// Source: P. J. Huber (1964), Ann. Math. Statist. 35, 73-101.
/// </remarks>
static class PulledIn
{
    const double Reach = 2.8; // sigmas
    const int Rounds = 5;

    internal static (IReadOnlyList<Shot> Shots, int Pulled) Of(IReadOnlyList<Shot> shots)
    {
        List<Shot[]> stations = [.. StationGroup.From(shots).Select(s => s.Shots.Where(x => !x.Called && x.Impact is not null).ToArray()).Where(s => s.Length > 2)];
        double[][] up = [.. stations.Select(s => s.Select(x => x.Impact!.Value.Up / x.Distance).ToArray())];
        double[][] right = [.. stations.Select(s => s.Select(x => x.Impact!.Value.Right / x.Distance).ToArray())];
        (double Up, double Right)[] centres = [.. up.Select((u, i) => (Median(u), Median(right[i])))];
        int free = 2 * (up.Sum(u => u.Length) - up.Length);
        if (free < 4)
        {
            return (shots, 0);
        }

        // First sigma from the median distance: ln 2 is half of its square over sigma squared for round normal impacts.
        double[] distances = [.. up.SelectMany((u, i) => u.Select((x, j) => Math.Sqrt(Square(x - centres[i].Up) + Square(right[i][j] - centres[i].Right))))];
        double sigma = Median(distances) / Math.Sqrt(2 * Math.Log(2)) * Math.Sqrt((double)distances.Length / (distances.Length - up.Length));
        for (int round = 0; round < Rounds && sigma > 0; round++)
        {
            double sum = 0;
            for (int i = 0; i < up.Length; i++)
            {
                var pulled = up[i].Select((x, j) => Pull(x, right[i][j], centres[i], Reach * sigma)).ToArray();
                centres[i] = (pulled.Average(p => p.Up), pulled.Average(p => p.Right));
                sum += pulled.Sum(p => Square(p.Up - centres[i].Up) + Square(p.Right - centres[i].Right));
            }

            sigma = Math.Sqrt(sum / free);
        }

        Dictionary<Shot, Impact> moved = new(ReferenceEqualityComparer.Instance);
        for (int i = 0; i < stations.Count; i++)
        {
            for (int j = 0; j < stations[i].Length; j++)
            {
                var (u, r) = Pull(up[i][j], right[i][j], centres[i], Reach * sigma);
                if (u != up[i][j] || r != right[i][j])
                {
                    moved[stations[i][j]] = new(stations[i][j].Distance * r, stations[i][j].Distance * u);
                }
            }
        }

        return ([.. shots.Select(s => moved.TryGetValue(s, out Impact to) ? s with { Impact = to } : s)], moved.Count);
    }

    static (double Up, double Right) Pull(double up, double right, (double Up, double Right) centre, double reach)
    {
        double u = up - centre.Up, r = right - centre.Right, distance = Math.Sqrt(u * u + r * r);
        return distance > reach ? (centre.Up + u * reach / distance, centre.Right + r * reach / distance) : (up, right);
    }

    static double Median(double[] values)
    {
        double[] sorted = [.. values.Order()];
        int middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    static double Square(double x) => x * x;
}
