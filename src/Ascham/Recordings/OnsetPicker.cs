namespace Ascham.Recordings;

/// <summary>Finds the moment at which noise turns into sound, and how sure that is.</summary>
/// <remarks>
/// <para>The cut k that splits the samples into two stretches of steady variance with the least
/// AIC(k) = k ln var(x_1..k) + (N - k - 1) ln var(x_k+1..N): N. Maeda, "A method for reading and checking phase times in autoprocessing system of seismic wave data",
/// Zisin 38 (1985) 365-379, as commonly quoted.</para>
/// <para>exp(-AIC/2) is the likelihood of the cut, so the AICs give its distribution: T. Takanami, G. Kitagawa, Ann. Inst. Statist. Math. 43 (1991) 407-433. They count every sample as news;
/// filtered samples are not, so the difference of AICs is reduced to the number of independent ones, twice the bandwidth times the time.</para>
/// </remarks>
static class OnsetPicker
{
    const int Edge = 4; // samples on either side that a variance needs

    /// <summary>The onset.</summary>
    /// <param name="sound">About the onset: noise first, then the sound to about its peak; shape (n), of zero mean.</param>
    /// <param name="newsPerSample">Independent samples per sample, above 0, up to 1.</param>
    /// <returns>Samples before the onset, and the standard deviation of that number.</returns>
    internal static (int Cut, double Sd) Pick(ReadOnlySpan<float> sound, double newsPerSample)
    {
        double[] aic = Criterion(sound);
        int best = Edge;
        for (int k = Edge; k < aic.Length - Edge; k++)
        {
            best = aic[k] < aic[best] ? k : best;
        }

        double weights = 0, squares = 0;
        for (int k = Edge; k < aic.Length - Edge; k++)
        {
            double weight = Math.Exp(-0.5 * newsPerSample * (aic[k] - aic[best]));
            weights += weight;
            squares += weight * (k - best) * (k - best);
        }

        return (best, Math.Sqrt(squares / weights));
    }

    /// <summary>AIC(k) by the number of samples k before the cut; shape (n). The outermost few are not to be used.</summary>
    internal static double[] Criterion(ReadOnlySpan<float> sound)
    {
        int n = sound.Length;
        double[] before = new double[n + 1];
        for (int i = 0; i < n; i++)
        {
            before[i + 1] = before[i] + (double)sound[i] * sound[i];
        }

        double least = Math.Max(1e-12 * before[n] / n, 1e-30); // silence recorded as zeros has no logarithm
        double[] aic = new double[n];
        for (int k = 1; k < n - 1; k++)
        {
            aic[k] = k * Math.Log(Math.Max(before[k] / k, least)) + (n - k - 1) * Math.Log(Math.Max((before[n] - before[k]) / (n - k), least));
        }

        return aic;
    }
}
