namespace Ascham.Flight;

using Ascham.Air;
using Ascham.Numerics;
using UnitsNet;

/// <summary>Flies a shot through any wind, by the shortest way that is exact for it.</summary>
/// <remarks>
/// Steady, uniform wind: the reduced form, see <see cref="March"/>. Stretches of steady wind: the reduced form from boundary to boundary,
/// exact as well. A wind that varies smoothly from place to place: the six equations, see <see cref="ThroughWind{T, TDrag, TWind}"/>.
/// </remarks>
static class Flown
{
    /// <summary>Flies.</summary>
    /// <param name="shot">All but the drag.</param>
    /// <param name="drag">Drag law.</param>
    /// <param name="face">The face, its distance counted from the origin.</param>
    /// <param name="steps">0 for steps by the built-in rule; otherwise this many equal steps, on each stretch.</param>
    /// <param name="arrival">On the face; where the flight ended when it does not get there.</param>
    internal static Outcome Fly<T, TDrag>(in Shot<T> shot, TDrag drag, in Face face, int steps, out Arrival<T> arrival)
        where T : struct, ITranscendental<T>
        where TDrag : struct, IDragLaw<T>
    {
        double start = face.Cosine * shot.From.X.Value + face.Sine * shot.From.Y.Value;
        return shot.Varying switch
        {
            WindSegments segments => ByStretches(shot, segments, drag, face, start, steps, out arrival),
            WindProfile profile => Through(shot, new PowerLaw<T>(profile, shot.Wind), drag, face, start, steps, out arrival),
            _ => Steadily(shot.Velocity, shot.Wind, shot.Gravity, drag, new(face.Distance - start, face.Sine, face.Cosine), steps, out arrival),
        };
    }

    /// <summary>By the six equations.</summary>
    internal static Outcome Through<T, TDrag, TWind>(
        in Shot<T> shot, TWind wind, TDrag drag, in Face face, double start, int steps, out Arrival<T> arrival)
        where T : struct, ITranscendental<T>
        where TDrag : struct, IDragLaw<T>
        where TWind : struct, IWindLaw<T>
    {
        var path = new ThroughWind<T, TDrag, TWind>(drag, wind, shot.Gravity, face.Sine, face.Cosine, shot.From);
        var state = new WindState<T>(T.Of(0), T.Of(0), T.Of(0), path.InPlane(shot.Velocity));
        NoSums sums = default;
        double distance = face.Distance - start, reach = 0;
        Outcome outcome = distance >= 0 && path.IsSound(state)
            ? March.Advance<ThroughWind<T, TDrag, TWind>, WindState<T>, NoSums, T>(path, distance, steps, ref state, ref sums, out reach)
            : Outcome.Away;
        arrival = new(
            state.Time, path.Out(new(T.Of(reach), state.Along, state.Right)), path.Out(state.Velocity), wind.At(path.Place(T.Of(reach), state)), reach);
        return outcome;
    }

    static Outcome ByStretches<T, TDrag>(
        in Shot<T> shot, WindSegments wind, TDrag drag, in Face face, double start, int steps, out Arrival<T> arrival)
        where T : struct, ITranscendental<T>
        where TDrag : struct, IDragLaw<T>
    {
        arrival = new(T.Of(0), new(T.Of(0), T.Of(0), T.Of(0)), shot.Velocity, shot.Wind, 0);
        if (!(face.Distance >= start))
        {
            return Outcome.Away;
        }

        ReadOnlySpan<(Length From, Wind Wind)> stretches = wind.All;
        for (int i = 0; i < stretches.Length; i++)
        {
            double here = start + arrival.Reach;
            bool last = i + 1 == stretches.Length || stretches[i + 1].From.Meters >= face.Distance;
            double end = last ? face.Distance : stretches[i + 1].From.Meters;
            if (end < here || (end == here && !last))
            {
                continue; // the flight starts beyond this stretch
            }

            Wind steady = stretches[i].Wind;
            Triple<T> air = shot.Wind + new Triple<T>(T.Of(steady.AlongSi), T.Of(steady.UpSi), T.Of(steady.AcrossSi));
            Outcome outcome = Steadily(arrival.Velocity, air, shot.Gravity, drag, new(end - here, face.Sine, face.Cosine), steps, out Arrival<T> leg);
            arrival = new(arrival.Time + leg.Time, arrival.Moved + leg.Moved, leg.Velocity, air, arrival.Reach + leg.Reach);
            if (outcome != Outcome.Met)
            {
                return outcome == Outcome.Away && arrival.Reach > 0 ? Outcome.TooFar : outcome;
            }

            if (last)
            {
                break;
            }
        }

        return Outcome.Met;
    }

    /// <summary>By the reduced form.</summary>
    internal static Outcome Steadily<T, TDrag>(
        Triple<T> velocity, Triple<T> wind, T gravity, TDrag drag, in Face fromLaunch, int steps, out Arrival<T> arrival)
        where T : struct, ITranscendental<T>
        where TDrag : struct, IDragLaw<T>
    {
        Outcome outcome = March.Fly(
            velocity, wind, gravity, drag, fromLaunch, steps, out T time, out Triple<T> moved, out Triple<T> arriving, out double reach);
        arrival = new(time, moved, arriving, wind, reach);
        return outcome;
    }
}
