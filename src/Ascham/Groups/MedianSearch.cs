namespace Ascham.Groups;

/// <summary>Searches for the point with the least sum of distances.</summary>
/// <remarks>
/// The sum is convex. Each round tries a Newton step and keeps it when the sum falls; otherwise it takes the step of Vardi and Zhang, which never raises the sum and does not stall on a
/// data point as Weiszfeld's does. A data point is the median exactly when the unit vectors to the others add to no more than the number of marks on it.
/// </remarks>
static class MedianSearch
{
    internal static (double Right, double Up) Of((double Right, double Up)[] points, double right, double up)
    {
        double scale = points.Max(p => double.Hypot(p.Right - right, p.Up - up));
        for (int round = 0; round < 500; round++)
        {
            var nearest = points.MinBy(p => double.Hypot(p.Right - right, p.Up - up));
            if (At(points, nearest.Right, nearest.Up) is { Pull: var pull, On: var on } && pull <= on * (1 + 1e-12))
            {
                return nearest;
            }

            Local here = At(points, right, up);
            var next = Next(points, here, right, up);
            double moved = double.Hypot(next.Right - right, next.Up - up);
            (right, up) = next;
            if (moved <= 1e-14 * scale)
            {
                break;
            }
        }

        return (right, up);
    }

    static (double Right, double Up) Next((double Right, double Up)[] points, Local here, double right, double up)
    {
        if (here.On == 0 && !here.Bend.Flat)
        {
            Symmetric inverse = here.Bend.Inverse;
            double toRight = right + (inverse.Right * here.Right) + (inverse.Cross * here.Up), toUp = up + (inverse.Cross * here.Right) + (inverse.Up * here.Up);
            if (At(points, toRight, toUp).Sum <= here.Sum)
            {
                return (toRight, toUp);
            }
        }

        // Vardi and Zhang: Weiszfeld's step is the pull over the sum of inverse distances, shortened by the marks stood on.
        double step = here.Pull > 0 ? Math.Max(0, 1 - (here.On / here.Pull)) / here.Weight : 0;
        return (right + (step * here.Right), up + (step * here.Up));
    }

    static Local At((double Right, double Up)[] points, double right, double up)
    {
        double sum = 0, weight = 0, pullRight = 0, pullUp = 0, on = 0;
        var bend = default(Symmetric);
        foreach (var (pointRight, pointUp) in points)
        {
            double dx = pointRight - right, dy = pointUp - up, d = double.Hypot(dx, dy);
            if (d == 0)
            {
                on++;
                continue;
            }

            sum += d;
            weight += 1 / d;
            pullRight += dx / d;
            pullUp += dy / d;
            bend += new Symmetric(dy * dy, dx * dx, -dx * dy) * (1 / (d * d * d));
        }

        return new(sum, weight, pullRight, pullUp, on, bend);
    }

    // Sum of distances, sum of inverse distances, sum of unit vectors towards the marks, marks stood on, second derivative.
    readonly record struct Local(double Sum, double Weight, double Right, double Up, double On, Symmetric Bend)
    {
        internal double Pull => double.Hypot(Right, Up);
    }
}
