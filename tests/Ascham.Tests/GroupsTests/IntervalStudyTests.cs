namespace Ascham.Tests.GroupsTests;

using Xunit;

/// <summary>A small piece of the study of intervals, with fixed seeds.</summary>
public class IntervalStudyTests
{
    static readonly Sampling Round = Sampling.All[0];

    [Fact(Explicit = true)] // run with -explicit only after a change of an interval; minutes on two quiet cores
    public void Write_the_whole_study() => IntervalStudyPage.Write();

    [Fact] // exact for round normal groups: four simulation standard errors of 90 % in 4000
    public void Statements_of_three_round_arrows_hold_as_stated()
    {
        Tally three = IntervalStudy.OneGroup(Round, 3);
        Assert.All(three.Statements.Where(s => s != "axis ratio"), s => Assert.InRange(three[s], 0.881, 0.919));
    }

    [Fact] // least squares is exact, four standard errors
    public void The_slope_of_three_round_arrows_holds_as_stated() =>
        Assert.InRange(IntervalStudy.Strings(Round, 3)["slope, least squares"], 0.86, 0.94);
}
