namespace Ascham.Notebooks;

using System.Globalization;
using Ascham.Air;
using Ascham.Bows;
using Ascham.Flight;
using Ascham.Records;
using Ascham.Sights;
using UnitsNet;

/// <summary>The flight and sight model that a setup describes, and what had to be supplied because the setup does not say it.</summary>
public sealed class SetupModel
{
    SetupModel(SightModel sight, IReadOnlyList<string> cautions) => (Sight, Cautions) = (sight, cautions);

    /// <summary>The bow with its sight.</summary>
    public SightModel Sight { get; }

    /// <summary>What was supplied, one sentence each.</summary>
    public IReadOnlyList<string> Cautions { get; }

    /// <summary>Builds the model.</summary>
    /// <param name="setup">The setup.</param>
    /// <returns>The model: measured drag constant, else drag area, else a typical drag for the arrow's mass; the setup's air, else the standard air at sea level; standard gravity.</returns>
    public static SetupModel Of(Setup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        List<string> cautions = [];
        var air = AirOf(setup.Air, cautions);
        Weigh(setup, cautions);
        var sight = new SightModel
        {
            Geometry = setup.Sight,
            LaunchSpeed = setup.Bow.LaunchSpeed,
            Drag = DragOf(setup, cautions),
            Air = air,
            Gravity = Gravity.Standard,
        };
        return new(sight, cautions);
    }

    static void Weigh(Setup setup, List<string> cautions)
    {
        var floor = MassFloor.OfOrLowest(setup.Bow);
        var loading = new Loading { ArrowMass = setup.Arrow.Mass, PeakWeight = setup.Bow.PeakWeight };
        if (!floor.Allows(loading))
        {
            cautions.Add(string.Create(CultureInfo.InvariantCulture, $"Do not shoot this arrow from this bow: {loading.GrainsPerPound:0.0} grains per pound of peak weight is below {floor.GrainsPerPound:0.##} ({floor.Origin}), close to a dry fire. Recurves and longbows need more; the maker's limit comes first. If the setup is mistyped, mend it."));
        }
    }

    static Drag DragOf(Setup setup, List<string> cautions)
    {
        if (setup.Arrow.DragConstant is { } k)
        {
            return Drag.FromConstant(k);
        }

        if (setup.Arrow.DragArea is { } area)
        {
            return Drag.FromArea(area, setup.Arrow.Mass);
        }

        // A modelling choice, not published: drag constants of component build-ups over common shafts lie between 0.0007 and 0.0023 1/m at 26 g.
        double typical = 0.0015 * 26 / setup.Arrow.Mass.Grams;
        cautions.Add(string.Create(CultureInfo.InvariantCulture, $"The setup gives neither drag_constant nor drag_area: a typical {typical:0.0000} 1/m is taken, which may be out by half."));
        return Drag.FromConstant(ReciprocalLength.FromInverseMeters(typical));
    }

    static Air AirOf(AirConditions? given, List<string> cautions)
    {
        if (given?.Temperature is not { } temperature)
        {
            cautions.Add("The setup gives no temperature: the standard air at sea level (15 °C, 1013.25 hPa) is taken. A tape check hardly depends on it.");
            return Air.StandardAt(Length.Zero);
        }

        if (given.Pressure is null)
        {
            cautions.Add("The setup gives no station pressure: 1013.25 hPa, the standard at sea level, is taken; at 1500 m the air is 15 % thinner.");
        }

        if (given.RelativeHumidity is null)
        {
            cautions.Add("The setup gives no humidity: 50 % is taken, worth half a per cent of density at most.");
        }

        return Air.Moist(temperature, given.Pressure ?? Pressure.FromHectopascals(1013.25), given.RelativeHumidity ?? Ratio.FromPercent(50));
    }
}
