namespace Ascham.Groups;

/// <summary>Searches for the fewest arrows that suffice.</summary>
static class LeastArrows
{
    internal const int Most = 10_000_000;

    /// <summary>The least number at which a chance that grows with the number reaches what is wanted.</summary>
    internal static int Reaching(double chance, int least, Func<int, double> chanceWith)
    {
        int low = least - 1, high = least;
        for (; chanceWith(high) < chance; high *= 2)
        {
            low = high;
            if (high > Most / 2)
            {
                throw new CannotTellException(FormattableString.Invariant($"More than {Most} arrows would be needed; no archer can shoot that. Ask for less."));
            }
        }

        while (high - low > 1)
        {
            int middle = low + ((high - low) / 2);
            (low, high) = chanceWith(middle) < chance ? (middle, high) : (low, middle);
        }

        return high;
    }
}
