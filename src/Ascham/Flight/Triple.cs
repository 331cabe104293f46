namespace Ascham.Flight;

using System.Runtime.CompilerServices;
using Ascham.Numerics;

/// <summary>A vector in world axes: downrange, up, to the archer's right.</summary>
readonly struct Triple<T>(T x, T y, T z)
    where T : struct, IReal<T>
{
    internal readonly T X = x, Y = y, Z = z;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Triple<T> operator +(Triple<T> a, Triple<T> b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Triple<T> operator -(Triple<T> a, Triple<T> b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Triple<T> operator *(T a, Triple<T> b) => new(a * b.X, a * b.Y, a * b.Z);

    internal T Dot(Triple<T> b) => X * b.X + Y * b.Y + Z * b.Z;

    internal Triple<T> Cross(Triple<T> b) => new(Y * b.Z - Z * b.Y, Z * b.X - X * b.Z, X * b.Y - Y * b.X);
}
