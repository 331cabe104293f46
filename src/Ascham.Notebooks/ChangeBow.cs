namespace Ascham.Notebooks;

using System.Globalization;
using Ascham.Air;
using Ascham.Causes;
using Ascham.Flight;
using Ascham.Groups;
using Ascham.Records;
using Ascham.Sights;
using UnitsNet;

/// <summary>What a ranking of causes needs beside the shots, from a setup and its sessions; whatever they do not say is supplied with a caution.</summary>
static class ChangeBow
{
    const double UsualSpeedSd = 0.015, UsualDragSd = 0.2, TypicalDragSd = 0.4, VirtualMass = 80; // of the value, of its logarithm, gr; common practice, no source

    public static KnownBow Of(Setup setup, SightModel sight, List<string> cautions)
    {
        if (setup.Bow.LaunchSpeedSd is null)
        {
            cautions.Add("The setup does not say how well the launch speed is known: 1.5 % is taken, as of one ordinary chronograph.");
        }

        if (setup.Bow.VirtualMass is null)
        {
            cautions.Add(string.Create(CultureInfo.InvariantCulture, $"The bow's virtual mass is taken as {VirtualMass:0} gr: it only says how much speed an arrow of another mass loses, and 30 gr more or less change that by a fifteenth."));
        }

        bool drag = setup.Arrow.DragConstant is not null || setup.Arrow.DragArea is not null;
        cautions.Add(string.Create(CultureInfo.InvariantCulture, $"The setup does not say how well the drag is known: {100 * (drag ? UsualDragSd : TypicalDragSd):0} % is taken. Against a baseline that hardly matters."));
        return new()
        {
            Sight = sight,
            PeakWeight = setup.Bow.PeakWeight,
            ArrowMass = setup.Arrow.Mass,
            VirtualMass = setup.Bow.VirtualMass ?? Mass.FromGrains(VirtualMass),
            SpeedSd = setup.Bow.LaunchSpeedSd is { } sd ? Math.Clamp(sd / setup.Bow.LaunchSpeed, 0.002, 0.2) : UsualSpeedSd,
            DragSd = drag ? UsualDragSd : TypicalDragSd,
        };
    }

    /// <summary>The errors of distances and settings: the largest of the sessions, since stations share one.</summary>
    public static ShootingFacts Facts(Session[] sessions, Setup setup, Marks? marks, List<string> cautions)
    {
        if (sessions.FirstOrDefault(s => s is { DistanceSource: not DistanceSource.Marked, DistanceSd: null }) is { } unknown)
        {
            throw new ArgumentException($"Session \"{unknown.Name}\" has {(unknown.DistanceSource == DistanceSource.Ranged ? "ranged" : "judged")} distances, but sessions.csv does not say how well: add a column distance_sd_yd or distance_sd_m with their standard deviation, such as 0.3 yd for a rangefinder (from its own data sheet).", nameof(sessions));
        }

        foreach (Session session in sessions.Where(s => s.SettingSd is null))
        {
            cautions.Add($"Session \"{session.Name}\" gives no setting_sd: the sight is taken as set without error.");
        }

        Length distance = Largest(sessions.Select(s => s.DistanceSd)), setting = Largest(sessions.Select(s => s.SettingSd));
        if (sessions.Select(s => s.DistanceSd ?? Length.Zero).Distinct().Count() > 1 || sessions.Select(s => s.SettingSd ?? Length.Zero).Distinct().Count() > 1)
        {
            cautions.Add("The sessions state different errors of distance or setting: the larger is taken for all.");
        }

        ShootingRange range = setup.Range;
        return new()
        {
            Butt = new() { ButtBelow = range.ButtBelow, ButtAbove = range.ButtAbove, ButtLeft = range.ButtLeft, ButtRight = range.ButtRight },
            DistanceSd = distance,
            SettingSd = Angle.FromRadians(setting / setup.Sight.TapePerPinTravel / setup.Sight.PeepToPin),
            Tape = marks is null ? null : Tape.Of(marks),
        };
    }

    /// <summary>The air of a session: from the log, else from the session; <see langword="null"/> when neither gives a temperature.</summary>
    public static Air? AirOf(Session session, IReadOnlyList<LogEntry> log, Air usual)
    {
        IQuantity? Logged(LogQuantity quantity) => log.LastOrDefault(e => e.Session == session.Name && e.Quantity == quantity)?.Value;
        Temperature? temperature = Logged(LogQuantity.Temperature) is Temperature t ? t : session.Temperature;
        Pressure? pressure = Logged(LogQuantity.Pressure) is Pressure p ? p : session.Pressure;
        return temperature is { } known ? Air.Moist(known, pressure ?? usual.Pressure, usual.RelativeHumidity) : null;
    }

    /// <summary>The mean as it would have been in the setup's air.</summary>
    public static StationMean InSetupAir(StationMean station, Air? air, SightModel sight)
    {
        if (air is null)
        {
            return station;
        }

        Length pin = station.SightAngle is { } angle ? sight.Geometry.PeepToPin * Math.Tan(angle.Radians) : sight.PinBelowPeep(station.Distance);
        // A drag constant belongs to the air it was measured in: the setup's.
        SightModel there = sight with { Air = air, Drag = Drag.FromConstant(sight.Drag.ConstantIn(sight.Air), sight.Air) };
        return station with { Up = station.Up - (there.HeightWithPinAt(pin, station.Distance) - sight.HeightWithPinAt(pin, station.Distance)) };
    }

    public static IEnumerable<string> AirCautions(Dictionary<string, Air?> airs, Air usual)
    {
        foreach (var (session, air) in airs)
        {
            double percent = air is null ? 0 : 100 * (air.Density / usual.Density - 1);
            if (air is null)
            {
                yield return $"Session \"{session}\" gives no temperature: its air is taken as the setup's, and the air stays among the suspects.";
            }
            else if (Math.Abs(percent) >= 0.5)
            {
                yield return string.Create(CultureInfo.InvariantCulture, $"The air of session \"{session}\" was {Math.Abs(percent):0.0} % {(percent > 0 ? "denser" : "thinner")} than the setup's: its impacts are carried over to the setup's air.");
            }
        }
    }

    /// <summary>The usual beliefs; where all air was recorded, what is left of the air's error is 1 %.</summary>
    public static CausePriors Priors(IEnumerable<Air?> airs)
    {
        const double Recorded = 0.01; // a thermometer in the sun, humidity not known; common practice, no source
        CausePrior usual = CausePriors.Usual.Causes.First(c => c.Cause == Cause.Air);
        return airs.All(a => a is not null) ? CausePriors.Usual.With(usual with { Sizes = [new(CauseSize.Air, 0, Recorded)] }) : CausePriors.Usual;
    }

    static Length Largest(IEnumerable<Length?> lengths) => Length.FromMeters(lengths.Max(l => l?.Meters ?? 0));
}
