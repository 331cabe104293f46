namespace Ascham.Arrows;

using Ascham.Numerics;

/// <summary>Which way a build-up leans where the formulas leave a choice.</summary>
enum DragLean
{
    None,

    /// <summary>Laminar air along the faces of the vanes, too, and front edges as swept as their outline lets them be.</summary>
    Least,

    /// <summary>The turbulent layer along the shaft with its curvature.</summary>
    Most,
}

/// <summary>A build-up as the integrator sees it: the formulas, with all that does not change along a flight worked out once.</summary>
readonly struct BuildUpCurve : IReynoldsCurve
{
    const double LaminarBase = 0.12; // E. L. Fleeman's 0.12 + 0.13 M² far below the speed of sound; read in a transcription

    readonly double slenderness, logSlenderness, point, steady, vaneArea, vaneLength, logVane;
    readonly DragLean lean;
    readonly double turbulentShare;        // 0 or 1; not a number when it follows the Reynolds number
    readonly double centre, width;

    internal BuildUpCurve(DragBuildUp arrow, double turbulentShare, Transition? transition, DragLean lean = DragLean.None)
    {
        this.lean = lean;
        slenderness = arrow.Slenderness;
        logSlenderness = Math.Log(slenderness);
        point = arrow.Point.Coefficient;
        Edges = ((lean == DragLean.Least ? arrow.Vanes?.LeastEdgeArea : arrow.Vanes?.EdgeArea) ?? 0) / arrow.Reference;
        steady = point + Edges + arrow.ExtraDragArea.SquareMeters / arrow.Reference;
        vaneArea = (arrow.Vanes?.FrictionArea ?? 0) / arrow.Reference;
        vaneLength = arrow.Vanes is { } vanes ? vanes.FrictionLength / arrow.ShaftDiameter.Meters : 1;
        logVane = Math.Log(vaneLength);
        this.turbulentShare = turbulentShare;
        (centre, width) = transition is null ? (0, 0) : (transition.Centre, transition.Width);
    }

    /// <summary>Coefficient of the edges of the vanes.</summary>
    internal double Edges { get; }

    public double Low => 16 * slenderness; // curvature 4 sqrt(slenderness/Re) at most 1

    public double High => 1e9 / slenderness; // where the formula of Prandtl and Schlichting ends

    public T At<T>(T reynolds)
        where T : struct, ITranscendental<T>
    {
        (T shaft, T tail, T vanes) = Parts(reynolds);
        return shaft + tail + vanes + T.Of(steady);
    }

    // The formulas are smooth down to Re = 0, the blend up to its poles in the complex plane, pi widths beside the centre.
    // Four tenths of the distance to the nearest of them leave a step of order 8 below 1e-6 m.
    public double Room(double reynolds, bool? falling)
    {
        double away = reynolds - centre, pole = Math.PI * width;
        return 0.4 * (width > 0 ? Math.Min(reynolds, Math.Sqrt(away * away + pole * pole)) : reynolds);
    }

    /// <summary>Shaft, base and faces of the vanes.</summary>
    internal (T Shaft, T Tail, T Vanes) Parts<T>(T reynolds)
        where T : struct, ITranscendental<T>
    {
        T log = T.Log(reynolds);
        T vanes = vaneArea * (lean == DragLean.Least ? SkinFriction.Laminar(vaneLength * reynolds) : SkinFriction.FifthRoot(log + T.Of(logVane)));
        if (turbulentShare == 0)
        {
            return (Laminar(reynolds), T.Of(LaminarBase), vanes);
        }

        T logAlong = log + T.Of(logSlenderness), friction = SkinFriction.PrandtlSchlichting(logAlong);
        if (lean == DragLean.Most)
        {
            friction += SkinFriction.TurbulentCurvature(logSlenderness + Math.Log(2), logAlong);
        }

        T turbulent = 4 * slenderness * friction;
        T wake = SkinFriction.Base(turbulent + T.Of(point));
        if (turbulentShare == 1)
        {
            return (turbulent, wake, vanes);
        }

        T share = T.Of(1) / (T.Of(1) + T.Exp(1 / width * (T.Of(centre) - reynolds)));
        T laminar = Laminar(reynolds);
        return (laminar + share * (turbulent - laminar), T.Of(LaminarBase) + share * (wake - T.Of(LaminarBase)), vanes);
    }

    T Laminar<T>(T reynolds)
        where T : struct, ITranscendental<T>
    {
        T along = slenderness * reynolds;
        T curvature = T.Of(4 * slenderness) / T.SquareRoot(along);
        return 4 * slenderness * SkinFriction.Laminar(along) * SkinFriction.Curvature(curvature);
    }
}
