namespace Ascham.Recordings;

using System.Globalization;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Where bow, target and microphone stood. The microphone may be anywhere: two distances say all that sound needs.</summary>
/// <remarks>
/// The microphone, and whoever tends it, never stands near the line of fire. Behind or beside the shooting line is the place; nobody goes ahead of it
/// before the range is closed by its own rules.
/// </remarks>
public sealed record ShotLayout
{
    const double NearlyLine = 1e-6;
    const double Ahead = 0.5; // m: the archer's own arm and bow
    const double NearestAside = 3; // m from the line of fire, ahead of the bow; judged, no source: a range's own rules ask for more

    ShotLayout(double distance, double distanceError, double toBow, double toTarget, double microphoneError)
        => (DistanceSi, DistanceErrorSi, ToBowSi, ToTargetSi, MicrophoneErrorSi) = (distance, distanceError, toBow, toTarget, microphoneError);

    /// <summary>From the grip of the bow to the face of the target, along the line of sight.</summary>
    public Length Distance => Length.FromMeters(DistanceSi);

    /// <summary>Standard error of that distance, shared by all shots of this layout.</summary>
    public Length DistanceError => Length.FromMeters(DistanceErrorSi);

    /// <summary>From the microphone to the bow.</summary>
    public Length MicrophoneToBow => Length.FromMeters(ToBowSi);

    /// <summary>From the microphone to the place of impact.</summary>
    public Length MicrophoneToTarget => Length.FromMeters(ToTargetSi);

    /// <summary>Standard error of each of the two, shared by all shots of this layout.</summary>
    public Length MicrophoneError => Length.FromMeters(MicrophoneErrorSi);

    /// <summary>Of the line of sight; positive uphill; -60° to +60°. Level when not given.</summary>
    public Angle Inclination
    {
        get;
        init
        {
            Require.InRange(value.Degrees, -60, 60, "degrees", nameof(Inclination));
            field = value;
        }
    }

    /// <summary>What to mind about the place of the microphone; <see langword="null"/> when it stands at or behind the bow. Your range's rules come first.</summary>
    public string? Caution => DownrangeSi <= Ahead ? null : string.Create(
        CultureInfo.InvariantCulture,
        $"The microphone stands {DownrangeSi:0.#} m ahead of the bow and {AsideSi:0.#} m from the line of fire. Set it up and fetch it only while the range is closed, let nobody stay with it, and expect to lose it to a stray arrow. Beside or behind the shooting line is the place for it.");

    internal double DistanceSi { get; }

    internal double DistanceErrorSi { get; }

    internal double ToBowSi { get; }

    internal double ToTargetSi { get; }

    internal double MicrophoneErrorSi { get; }

    /// <summary>How far along the line from bow to target the microphone stands, by the law of cosines; negative behind the bow.</summary>
    internal double DownrangeSi => (DistanceSi * DistanceSi + ToBowSi * ToBowSi - ToTargetSi * ToTargetSi) / (2 * DistanceSi);

    /// <summary>Cosine of the angle between the way of the sound of the release and the way of the arrow.</summary>
    internal double BowCosine => ToBowSi == 0 ? 0 : Math.Clamp(DownrangeSi / ToBowSi, -1, 1);

    /// <summary>Cosine of the angle between the way of the sound of the impact and the way of the arrow; -1 when it comes straight back.</summary>
    internal double TargetCosine => ToTargetSi == 0 ? 0 : Math.Clamp((DownrangeSi - DistanceSi) / ToTargetSi, -1, 1);

    /// <summary>Change of <see cref="ToTargetSi"/> by the distance: none when it was measured by itself.</summary>
    internal double TargetPerDistance { get; private init; }

    double AsideSi => Math.Sqrt(Math.Max(0, ToBowSi * ToBowSi - DownrangeSi * DownrangeSi));

    /// <summary>From the two distances of the microphone, as a tape or a rangefinder gives them.</summary>
    /// <param name="distance">Grip to face along the line of sight; 2 m to 300 m.</param>
    /// <param name="distanceError">Its standard error; zero or more.</param>
    /// <param name="microphoneToBow">Zero or more.</param>
    /// <param name="microphoneToTarget">Zero or more.</param>
    /// <param name="microphoneError">Standard error of each of the two; zero or more.</param>
    /// <returns>The layout.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <exception cref="ArgumentException">The three distances make no triangle, by more than three standard errors; or the microphone stands in the line of fire, ahead of the bow and within 3 m of it.</exception>
    public static ShotLayout FromDistances(Length distance, Length distanceError, Length microphoneToBow, Length microphoneToTarget, Length microphoneError)
    {
        double d = Require.InRange(distance.Meters, 2, 300, "m", nameof(distance)), b = Require.InRange(microphoneToBow.Meters, 0, 1000, "m", nameof(microphoneToBow));
        double t = Require.InRange(microphoneToTarget.Meters, 0, 1000, "m", nameof(microphoneToTarget));
        double dError = Require.NotNegative(distanceError.Meters, "m", nameof(distanceError)), mError = Require.NotNegative(microphoneError.Meters, "m", nameof(microphoneError));
        double allowed = NearlyLine * d + 3 * Math.Sqrt(dError * dError + 2 * mError * mError);
        return Math.Abs(b - t) <= d + allowed && b + t >= d - allowed
            ? OutOfTheWay(new(d, dError, b, t, mError))
            : throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"Distances of {d:0.##} m bow to target, {b:0.##} m microphone to bow and {t:0.##} m microphone to target make no triangle. Measure them again."),
                nameof(microphoneToTarget));
    }

    /// <summary>From the place of the microphone as seen by the archer. An error of the distance is then one of the microphone's distance from the target as well.</summary>
    /// <param name="distance">Grip to face along the line of sight; 2 m to 300 m.</param>
    /// <param name="distanceError">Its standard error; zero or more.</param>
    /// <param name="behind">Of the microphone, behind the grip along the line; negative ahead of it, where <see cref="Caution"/> speaks.</param>
    /// <param name="aside">From the line, to either side; zero or more.</param>
    /// <param name="microphoneError">Standard error of its distance from bow and from target; zero or more.</param>
    /// <returns>The layout.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <exception cref="ArgumentException">The microphone stands in the line of fire, ahead of the bow and within 3 m of it.</exception>
    public static ShotLayout WithMicrophone(Length distance, Length distanceError, Length behind, Length aside, Length microphoneError)
    {
        double back = Require.InRange(behind.Meters, -400, 400, "m", nameof(behind)), off = Require.InRange(aside.Meters, 0, 400, "m", nameof(aside));
        double along = back + distance.Meters, toTarget = Math.Sqrt(along * along + off * off);
        return FromDistances(distance, distanceError, Length.FromMeters(Math.Sqrt(back * back + off * off)), Length.FromMeters(toTarget), microphoneError) with
        {
            TargetPerDistance = toTarget > 0 ? along / toTarget : 0,
        };
    }

    // Beyond what the errors of the distances could feign beside the bow.
    static ShotLayout OutOfTheWay(ShotLayout layout) =>
        layout.DownrangeSi <= Ahead + 3 * (layout.DistanceErrorSi + layout.MicrophoneErrorSi) || layout.AsideSi >= NearestAside
            ? layout
            : throw new ArgumentException(string.Create(
                CultureInfo.InvariantCulture,
                $"The microphone would stand {layout.DownrangeSi:0.#} m ahead of the bow and only {layout.AsideSi:0.#} m from the line of fire. Nothing is worked out for a microphone there: put it beside or behind the shooting line, or measure its distances again."));
}
