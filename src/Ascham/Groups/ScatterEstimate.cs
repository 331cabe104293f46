namespace Ascham.Groups;

using Ascham.Quantities;
using UnitsNet;

/// <summary>Whether one sigma serves both axes.</summary>
public enum ScatterShape
{
    /// <summary>The same sigma across and up: the default for few arrows.</summary>
    Round,

    /// <summary>A sigma across and another up. A tilted stretch is not estimated.</summary>
    Stretched,
}

/// <summary>What is taken to be known of the centre of the impacts.</summary>
public enum CentreAssumption
{
    /// <summary>The sight is right: impacts centre on the aim point. An offset known from elsewhere is added with <see cref="ScatterEstimate.Plus"/>.</summary>
    OnAim,

    /// <summary>The sight stays as it was: the centre is the group's own, as far as its arrows tell.</summary>
    AsShot,
}

/// <summary>What shots tell of how arrows land on a face at one distance.</summary>
/// <remarks>
/// <para><b>Model.</b> Sums of squares over chi-square, and means over normal numbers, turned about: the laws that could have left these shots, each as likely as
/// it should be (fiducial; the same as a right-invariant prior). For intervals the distance of the centre is drawn so that it is not overrated. Any question asked of it is asked of 2048 such laws, spread evenly rather than at random, so that
/// the same shots always give the same answer.</para>
/// <para><b>Accuracy.</b> With one sigma and a known centre intervals are exact for normal impacts; otherwise they may lie too low: about a group's own centre 90 % intervals from three arrows hold the truth 75 to 85 times in 100, the lower end 96 or more; docs/limits.md.</para>
/// <para><b>Limits.</b> Only what varied while these arrows were shot is in it: not the wander of the archer from day to day.</para>
/// <para><b>Source.</b> Fisher (1935), The fiducial argument; Weerahandi (1993), Generalized confidence intervals, <i>J. Am. Statist. Assoc.</i> 88.</para>
/// </remarks>
public sealed class ScatterEstimate
{
    readonly ScatterDraws draws;

    internal ScatterEstimate(ScatterDraws draws, int count) => (this.draws, Count) = (draws, count);

    /// <summary>Number of impacts behind it.</summary>
    public int Count { get; }

    /// <summary>Takes what one group tells.</summary>
    /// <param name="group">The group, of two counted impacts or more and none missed.</param>
    /// <param name="shape">Whether one sigma serves both axes.</param>
    /// <param name="centre">What is taken to be known of the centre.</param>
    /// <returns>The estimate, for the group's own distance.</returns>
    /// <exception cref="CannotTellException">Fewer than two counted impacts, all recorded at one height or one place across, or an arrow missed.</exception>
    public static ScatterEstimate From(Group group, ScatterShape shape, CentreAssumption centre)
    {
        ArgumentNullException.ThrowIfNull(group);
        Dispersion<Length> dispersion = group.Dispersion(0.9);
        Moments moments = group.Moments;
        return new(
            centre == CentreAssumption.OnAim
                ? ScatterDraws.Centred(Variances(shape, dispersion))
                : ScatterDraws.AboutMean(Variances(shape, dispersion), moments.MeanRight, moments.MeanUp, moments.Count),
            moments.Count);
    }

    /// <summary>Takes a round scatter about the aim point, such as one pooled over groups or one that missed arrows took part in.</summary>
    /// <param name="bothAxes">Sigma per axis.</param>
    /// <returns>The estimate, for the distance that sigma belongs to.</returns>
    public static ScatterEstimate OnAim(Sigma<Length> bothAxes)
    {
        ArgumentNullException.ThrowIfNull(bothAxes);
        return new(ScatterDraws.Centred(Of(bothAxes)), bothAxes.Estimate.Count);
    }

    /// <summary>Takes a stretched scatter about the aim point.</summary>
    /// <param name="across">Sigma across the face.</param>
    /// <param name="up">Sigma up the face.</param>
    /// <returns>The estimate, for the distance that the sigmas belong to.</returns>
    public static ScatterEstimate OnAim(Sigma<Length> across, Sigma<Length> up)
    {
        ArgumentNullException.ThrowIfNull(across);
        ArgumentNullException.ThrowIfNull(up);
        return new(ScatterDraws.Centred(Of(across), Of(up)), Math.Min(across.Estimate.Count, up.Estimate.Count));
    }

    /// <summary>Adds a further, independent reason to miss, its size known.</summary>
    /// <param name="added">What is added.</param>
    /// <returns>The wider, shifted estimate.</returns>
    public ScatterEstimate Plus(AddedScatter added)
    {
        ArgumentNullException.ThrowIfNull(added);
        return new(draws.Plus(added), Count);
    }

    /// <summary>Median, interval and mean of a number that depends on the law.</summary>
    internal (Estimate<double> Estimate, double Mean) Spread(Func<Scatter, double> ask, double level)
    {
        Require.Level(level);
        double[] answers = [.. draws.ForInterval().Select(ask)], next = draws.CentreKnown ? answers : [.. draws.ForNextArrow().Select(ask)];
        double middle = answers.Average(), sd = Math.Sqrt(answers.Average(a => (a - middle) * (a - middle))), mean = next.Average();
        var (low, median, high) = Ends(answers, level);
        if (!draws.CentreKnown && !draws.Round)
        {
            // Axis by axis neither way of drawing the centre holds often enough on both sides: the outer ends of the two do.
            var (lowNext, _, highNext) = Ends(next, level);
            (low, high) = (Math.Min(low, lowNext), Math.Max(high, highNext));
        }

        return (new(median, sd, low, high, level, Count, "median of the laws the shots leave open, normal impacts"), mean);
    }

    static (double Low, double Median, double High) Ends(double[] answers, double level)
    {
        double[] sorted = [.. answers.Order()];
        double At(double share)
        {
            double place = Math.Clamp((share * sorted.Length) - 0.5, 0, sorted.Length - 1);
            int below = Math.Min((int)place, sorted.Length - 2);
            return sorted[below] + ((place - below) * (sorted[below + 1] - sorted[below]));
        }

        return (At((1 - level) / 2), At(0.5), At((1 + level) / 2));
    }

    /// <summary>Mean over the laws of several numbers at once.</summary>
    internal double[] Mean(Func<Scatter, double[]> ask)
    {
        double[][] answers = [.. draws.ForNextArrow().Select(ask)];
        return [.. Enumerable.Range(0, answers[0].Length).Select(i => answers.Average(a => a[i]))];
    }

    static (double Variance, double Freedom)[] Variances(ScatterShape shape, Dispersion<Length> dispersion) =>
        shape == ScatterShape.Round ? [Of(dispersion.BothAxes)] : [Of(dispersion.Horizontal), Of(dispersion.Vertical)];

    static (double Variance, double Freedom) Of(Sigma<Length> sigma) => (sigma.Sample.Meters * sigma.Sample.Meters, sigma.DegreesOfFreedom);
}
