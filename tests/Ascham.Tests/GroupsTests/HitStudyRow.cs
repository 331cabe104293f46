namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Quantities;

/// <summary>How often the interval of a hit probability holds the truth, and how often the next arrow hits against what was said; sigma across is 1 m.</summary>
public sealed record HitStudyRow(ScatterShape Shape, CentreAssumption Centre, int Arrows, double Stretch, double Offset, double Radius, double Held, double LowHeld, double Said, double Truth)
{
    public static HitStudyRow Run(ScatterShape shape, CentreAssumption centre, double stretch, int n, double offset, double radius, int repeats, int seed)
    {
        var simulated = new Simulated(seed);
        Impact centreThere = centre == CentreAssumption.OnAim ? Simulated.At(0, 0) : Simulated.At(0.6 * offset, 0.8 * offset);
        double truth = HitProbability.OfCircle(Scatter.Stretched(centreThere, 1.Metres, stretch.Metres, 0), radius.Metres), held = 0, low = 0, said = 0;
        for (int k = 0; k < repeats; k++)
        {
            Group group = Group.Of(simulated.Group(n, stretch).Impacts.Select(i => new Impact(i.Right + centreThere.Right, i.Up + centreThere.Up)));
            HitEstimate hit = HitProbability.OfCircle(ScatterEstimate.From(group, shape, centre), radius.Metres, 0.9);
            held += hit.Probability.Low <= truth && truth <= hit.Probability.High ? 1 : 0;
            low += hit.Probability.Low <= truth ? 1 : 0;
            said += hit.NextArrow;
        }

        return new(shape, centre, n, stretch, offset, radius, held / repeats, low / repeats, said / repeats, truth);
    }
}
