namespace Ascham.Groups;

/// <summary>Looks for the smallest whole number from which on something holds.</summary>
static class Fewest
{
    /// <summary>The smallest number from first to last that will do, given that every larger one will do too; null when none does.</summary>
    internal static int? From(int first, int last, Func<int, bool> willDo)
    {
        // Doubling first: power functions cost more the larger the number.
        int low = first - 1, high = first;
        while (!willDo(high))
        {
            if (high == last)
            {
                return null;
            }

            (low, high) = (high, Math.Min(last, 2 * high));
        }

        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            (low, high) = willDo(middle) ? (low, middle) : (middle, high);
        }

        return high;
    }
}
