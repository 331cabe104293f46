namespace Ascham.Groups;

/// <summary>The first arrow of each session, kept apart from the rest.</summary>
/// <remarks>
/// A first arrow, shot cold, is the one that a hunter has. Whether it strikes where later ones do is a question of its own, and a group of warm arrows does not answer it.
/// </remarks>
public static class FirstArrows
{
    /// <summary>Takes the first shot of each session: the one of the lowest number.</summary>
    /// <param name="shots">One shot or more, each with an impact or a miss.</param>
    /// <returns>One shot a session, in order of first appearance.</returns>
    /// <exception cref="ArgumentException">No shot, or a shot with both impact and miss or neither.</exception>
    /// <remarks><b>Limits.</b> A record that starts at number 2 has no first arrow: the session is left out.</remarks>
    public static IReadOnlyList<Shot> Of(IEnumerable<Shot> shots) => [.. Sessions(shots).Where(s => s.First.Number == 1).Select(s => s.First)];

    /// <summary>Takes all shots but the first of each session.</summary>
    /// <param name="shots">One shot or more, each with an impact or a miss.</param>
    /// <returns>The rest, in the order given.</returns>
    /// <exception cref="ArgumentException">No shot, or a shot with both impact and miss or neither.</exception>
    public static IReadOnlyList<Shot> Without(IEnumerable<Shot> shots) => [.. ShotCheck.Checked(shots, nameof(shots)).Where(s => s.Number != 1)];

    static IEnumerable<(string Session, Shot First)> Sessions(IEnumerable<Shot> shots) =>
        ShotCheck.Checked(shots, nameof(shots)).GroupBy(s => s.Session).Select(g => (g.Key, g.MinBy(s => s.Number)!));
}
