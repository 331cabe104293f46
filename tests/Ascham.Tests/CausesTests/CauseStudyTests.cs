namespace Ascham.Tests.CausesTests;

using Ascham.Causes;
using Xunit;

public class CauseStudyTests
{
    [Fact]
    public void The_first_cases_of_the_study_come_out_as_committed() => Assert.Equal(File.ReadAllText(CauseStudyPage.SlicePath), CauseStudyPage.SliceText());

    [Fact] // coverage: a slice of the study that no page was made from
    public void A_fresh_slice_is_calibrated_and_covers()
    {
        var outcomes = CauseStudy.Run(90_001, 250, CausePriors.Usual, CausePriors.Usual);
        int sizes = outcomes.Sum(o => o.Sizes), covered = outcomes.Sum(o => o.Covered);

        // four standard errors of 250 cases, and of their sizes
        Assert.InRange(outcomes.Sum(o => (o.Right ? 1 : 0) - o.Probability), -4 * 0.45 * Math.Sqrt(250), 4 * 0.45 * Math.Sqrt(250));
        Assert.InRange(covered, (0.89 * sizes) - (4 * 0.31 * Math.Sqrt(sizes)), (0.89 * sizes) + (4 * 0.31 * Math.Sqrt(sizes)));
        Assert.True(outcomes.Count(o => o.Truth == "nothing" && o.Settled && o.Answer != "nothing") <= 3);
    }

    [Fact(Explicit = true)]
    public void Write_the_long_study() => CauseStudyPage.Write();
}
