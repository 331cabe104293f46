namespace Ascham.Tests.GroupsTests;

using Xunit;

/// <summary>Plays a few rows of docs/validation/coverage.md again.</summary>
public class IntervalStudyTests
{
    [Fact(Explicit = true)] // a quarter of an hour
    public void Write_the_whole_study() => IntervalStudyPage.Write();
}
