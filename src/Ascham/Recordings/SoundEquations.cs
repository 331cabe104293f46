namespace Ascham.Recordings;

using System.Globalization;
using Ascham.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;

/// <summary>The equations of some shots: heard time = time of flight + what sound and delays add, with all errors and which of them the shots share.</summary>
/// <remarks>
/// Of each shot alone: its onsets, its own speed. Of the shots of one layout: distance, places of the microphone. Of all: speed of sound, wind, place of the point at the exit, delays.
/// The last do not average out, however many shots there are.
/// </remarks>
sealed class SoundEquations
{
    const double Disagreeing = 0.001;
    const int Iterations = 40;

    readonly IReadOnlyList<TimedShot> shots;
    readonly SoundPath[] paths;
    readonly SoundAir air;
    readonly ArrowAtExit arrow;
    readonly double spread;

    internal SoundEquations(IReadOnlyList<TimedShot> shots, SoundAir air, ArrowAtExit arrow, double spread)
    {
        (this.shots, this.air, this.arrow, this.spread) = (shots, air, arrow, spread);
        paths = [.. shots.Select(s => new SoundPath(s.Layout, air, arrow))];
        for (int i = 0; i < paths.Length; i++)
        {
            if (!(Flight(i) > 0.01))
            {
                throw new ArgumentException(
                    string.Create(CultureInfo.InvariantCulture, $"Shot {i + 1}: of {1000 * shots[i].Apart.Seconds:0} ms between the sounds, sound and delays take {1000 * paths[i].Constant:0} ms; nothing is left for the flight. Check the places of the microphone and the onsets."),
                    nameof(shots));
            }
        }
    }

    internal int Count => paths.Length;

    /// <summary>Mean of way over time of flight: where a search begins.</summary>
    internal double Start => paths.Select((p, i) => p.Flown / Flight(i)).Average();

    /// <summary>Solves for the speed, and for the drag as well when asked.</summary>
    /// <param name="rates">Times of flight by speed, drag, shot's path and layout.</param>
    /// <param name="speed">Where to start.</param>
    /// <param name="drag">Where to start, or the drag that is known.</param>
    /// <param name="dragError">Standard error of the known drag; <see langword="null"/> to solve for it.</param>
    internal (double Speed, double Drag, GeneralisedLeastSquares.Solution Step) Solve(Func<double, double, SoundPath, TimeRates> rates, double speed, double drag, double? dragError)
    {
        for (int i = 0; i < Iterations; i++)
        {
            TimeRates[] at = [.. paths.Select(p => rates(speed, drag, p))];
            var design = Matrix<double>.Build.Dense(Count, dragError is null ? 2 : 1, (row, column) => column == 0 ? at[row].BySpeed : at[row].ByDrag);
            var left = Vector<double>.Build.Dense(Count, row => Flight(row) - at[row].Time);
            var step = GeneralisedLeastSquares.Fit(design, left, Covariance(at, dragError ?? 0));
            double faster = step.Coefficients[0], draggier = dragError is null ? step.Coefficients[1] : 0;
            if (Math.Abs(faster) < 1e-7 * speed && Math.Abs(draggier) < 1e-9)
            {
                Agree(step);
                return (speed, drag, step);
            }

            speed += Math.Clamp(faster, -0.3 * speed, 0.3 * speed);
            drag += Math.Clamp(draggier, -0.004, 0.004);
        }

        throw new InvalidOperationException("The fit did not settle: the times do not look like those of one bow and arrow. Check distances and onsets.");
    }

    double Flight(int shot) => shots[shot].Apart.Seconds - paths[shot].Constant;

    Matrix<double> Covariance(TimeRates[] at, double dragError)
    {
        double[][] shared =
        [
            [.. paths.Select(p => p.ByRelativeSound * air.SoundErrorShare)],
            [.. paths.Select((p, i) => (p.ByTail + at[i].ByTail) * air.TailWindError.MetersPerSecond)],
            [.. at.Select(a => -a.ByPath * arrow.LeadError.Meters)],
            [.. at.Select(a => a.ByDrag * dragError)],
            [.. at.Select(_ => arrow.Delay.ErrorSi)],
            [.. at.Select(_ => arrow.TouchToSoundError.Seconds)],
        ];
        return Matrix<double>.Build.Dense(Count, Count, (i, j) =>
        {
            double sum = shared.Sum(s => s[i] * s[j]);
            if (shots[i].Layout == shots[j].Layout)
            {
                double distance = shots[i].Layout.DistanceErrorSi;
                sum += (at[i].ByPath + paths[i].ByDistance) * (at[j].ByPath + paths[j].ByDistance) * distance * distance + paths[i].MicrophoneError * paths[j].MicrophoneError;
            }

            double own = shots[i].ApartError.Seconds, varied = at[i].BySpeed * spread;
            return i == j ? sum + own * own + varied * varied : sum;
        });
    }

    static void Agree(GeneralisedLeastSquares.Solution step)
    {
        if (step.FreeObservations < 1 || ChiSquared.CDF(step.FreeObservations, step.ChiSquare) < 1 - Disagreeing)
        {
            return;
        }

        int worst = step.Residuals.AbsoluteMaximumIndex();
        throw new ShotsDisagreeException(
            string.Create(CultureInfo.InvariantCulture, $"These shots do not agree within their errors (chi-square {step.ChiSquare:0.#} on {step.FreeObservations}). Shot {worst + 1} lies farthest off, {1000 * step.Residuals[worst]:0.0} ms. Look at its picture: the wrong sound was taken, or a distance is wrong, or the bow varies more than stated."),
            [.. step.Residuals.Select(r => Duration.FromSeconds(r))], step.ChiSquare, step.FreeObservations);
    }
}
