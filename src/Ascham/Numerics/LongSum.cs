namespace Ascham.Numerics;

/// <summary>A sum that keeps what rounding would drop.</summary>
/// <remarks>D. E. Knuth, <i>The Art of Computer Programming</i> 2, section 4.2.2: the rounding error of a sum is itself a number that can be had exactly.</remarks>
struct LongSum
{
    double sum, dropped;

    /// <summary>The sum, rounded once.</summary>
    internal readonly double Value => sum + dropped;

    internal void Add(double term)
    {
        double next = sum + term, part = next - sum;
        dropped += sum - (next - part) + (term - part);
        sum = next;
    }

    /// <summary>Adds a product, its own rounding error too.</summary>
    internal void AddProduct(double a, double b)
    {
        double product = a * b;
        dropped += Math.FusedMultiplyAdd(a, b, -product);
        Add(product);
    }
}
