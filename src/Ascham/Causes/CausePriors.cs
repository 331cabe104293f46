namespace Ascham.Causes;

using Ascham.Quantities;

/// <summary>What is believed before the evidence: how often each cause is met, how large, and what an ordinary day looks like.</summary>
/// <remarks>
/// Every number here can be changed. None of <see cref="Usual"/> has a published source: they are what bow benches
/// commonly see, and docs/models/causes.md tells what wrong ones do.
/// </remarks>
public sealed record CausePriors
{
    /// <summary>The usual ones.</summary>
    public static CausePriors Usual { get; } = new();

    /// <summary>One entry per cause that is considered; a cause without an entry is ruled out.</summary>
    public IReadOnlyList<CausePrior> Causes { get; init; } =
    [
        // common practice, no source, all of them
        new(Cause.PeakWeight, 0.10, [new(CauseSize.PeakWeight, -1.0, 2.5)]),
        new(Cause.ArrowMass, 0.05, [new(CauseSize.ArrowMass, 0, 8)]),
        new(Cause.Drag, 0.08, [new(CauseSize.Drag, 0.25, 0.15)], Growth: 0.2, GrowthSd: 0.2),
        new(Cause.Elevation, 0.10, [new(CauseSize.Elevation, 0, 1.5)]),
        new(Cause.Lateral, 0.10, [new(CauseSize.Lateral, 0, 1.5)]),
        new(Cause.Cant, 0.06, [new(CauseSize.Cant, 0, 1.5)]),
        new(Cause.SightAxis, 0.03, [new(CauseSize.SightAxis, 0, 1.5)]),
        new(Cause.Air, 0.03, [new(CauseSize.Air, 0, 0.04)]),
        new(Cause.Wind, 0.06, [new(CauseSize.TailWind, 0, 2), new(CauseSize.CrossWind, 0, 2)], Growth: 0.15, GrowthSd: 0.2),
        new(Cause.Distance, 0.03, [new(CauseSize.Distance, 0, 0.02)]),
        new(Cause.Fatigue, 0.06, [new(CauseSize.Fatigue, -0.15, 0.15)], Growth: 0.15, GrowthSd: 0.2),
        new(Cause.ArcherDay, 0.12, [new(CauseSize.DayUp, 0, 0.8), new(CauseSize.DayRight, 0, 0.8)], Growth: 0.2, GrowthSd: 0.2),
    ];

    /// <summary>Odds of something else altogether, against nothing at all.</summary>
    public double SomethingElse { get; init; } = 0.05; // common practice, no source

    /// <summary>Standard deviation, per axis, of an archer's offset from one ordinary day to the next, mrad.</summary>
    public double OrdinaryDay { get; init; } = 0.25; // common practice, no source

    /// <summary>Standard deviation of the natural logarithm of scatter from one ordinary day to the next.</summary>
    public double OrdinaryScatter { get; init; } = 0.10; // common practice, no source

    /// <summary>Standard deviation of how an archer's arrows rise or sink along every string, then as now, mrad per arrow.</summary>
    public double HabitSlope { get; init; } = 0.10; // common practice, no source

    /// <summary>Standard deviation of how that differs from one time to another, mrad per arrow.</summary>
    public double OrdinarySlope { get; init; } = 0.04; // common practice, no source

    /// <summary>Standard deviation, in proportion, of the peak weight as the setup states it, for a reading without one from when all was well.</summary>
    public double StatedWeightSd { get; init; } = 0.02; // common practice, no source

    /// <summary>Standard deviation, in proportion, of the arrow's mass as the setup states it.</summary>
    public double StatedMassSd { get; init; } = 0.01; // common practice, no source

    /// <summary>Standard deviation of one mark of the tape, beside all that the tape gets wrong as a whole, mrad.</summary>
    public double MarkSd { get; init; } = 0.2; // common practice, no source

    /// <summary>Standard deviation of the tape as a whole up and down, and of the sight to the sides, mrad.</summary>
    public double ZeroSd { get; init; } = 1.0; // common practice, no source

    /// <summary>What a sign on the bow or arrow says of the causes; a sign without an entry says nothing.</summary>
    public IReadOnlyList<SignRate> Signs { get; init; } =
    [
        // common practice, no source, all of them
        new(SignKind.ContactMarks, 0.05, [new(Cause.Drag, 0.7)]),
        new(SignKind.WitnessMoved, 0.03, [new(Cause.Elevation, 0.6), new(Cause.Lateral, 0.5)]),
        new(SignKind.BareShaftMoved, 0.10, [new(Cause.Elevation, 0.4), new(Cause.Lateral, 0.5)]),
        new(SignKind.LevelOff, 0.05, [new(Cause.Cant, 0.8), new(Cause.SightAxis, 0.2)]),
        new(SignKind.SightBarTilted, 0.04, [new(Cause.SightAxis, 0.9)]),
        new(SignKind.WindFelt, 0.15, [new(Cause.Wind, 0.9)]),
        new(SignKind.DistanceWrong, 0.02, [new(Cause.Distance, 0.9)]),
    ];

    /// <summary>The same with one cause believed otherwise.</summary>
    /// <param name="prior">Takes the place of the entry of its cause.</param>
    /// <returns>The changed beliefs.</returns>
    public CausePriors With(CausePrior prior)
    {
        ArgumentNullException.ThrowIfNull(prior);
        return this with { Causes = [.. Causes.Where(c => c.Cause != prior.Cause), prior] };
    }

    /// <summary>The same with some causes ruled out.</summary>
    /// <param name="causes">Which.</param>
    /// <returns>The changed beliefs.</returns>
    public CausePriors Without(params IEnumerable<Cause> causes) => this with { Causes = [.. Causes.Where(c => !causes.Contains(c.Cause))] };

    internal void Check()
    {
        foreach (CausePrior cause in Causes)
        {
            cause.Check();
        }

        if (Causes.Count == 0 || Causes.Select(c => c.Cause).Distinct().Count() != Causes.Count)
        {
            throw new ArgumentException("Priors need at least one cause, and each cause once.", nameof(Causes));
        }

        Require.NotNegative(SomethingElse, "", nameof(SomethingElse));
        Require.NotNegative(OrdinaryDay, "mrad", nameof(OrdinaryDay));
        Require.Positive(OrdinaryScatter, "", nameof(OrdinaryScatter));
        Require.NotNegative(MarkSd, "mrad", nameof(MarkSd));
        Require.Positive(ZeroSd, "mrad", nameof(ZeroSd));
        Require.NotNegative(HabitSlope, "mrad per arrow", nameof(HabitSlope));
        Require.NotNegative(OrdinarySlope, "mrad per arrow", nameof(OrdinarySlope));
        Require.NotNegative(StatedWeightSd, "", nameof(StatedWeightSd));
        Require.NotNegative(StatedMassSd, "", nameof(StatedMassSd));
        foreach (SignRate sign in Signs)
        {
            Require.Level(sign.Otherwise, $"{nameof(sign.Otherwise)} of {sign.Kind}");
            foreach (SignGiven given in sign.Given)
            {
                Require.Level(given.Probability, $"{nameof(given.Probability)} of {sign.Kind} given {given.Cause.Key()}");
            }
        }
    }
}
