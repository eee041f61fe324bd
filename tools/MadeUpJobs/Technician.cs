namespace MadeUpJobs;

/// <summary>How one of the workshop's people works and writes. Shares are chances between 0 and 1.</summary>
/// <param name="Looks">Of the findings one could check, how many this person checks.</param>
/// <param name="WritesNormal">Of the checks with nothing found, how many are written down.</param>
/// <param name="Confirms">The bad part is measured before or after it comes out.</param>
/// <param name="Misled">Mends something else first.</param>
/// <param name="TriesOut">Tests a new part before it goes in.</param>
/// <param name="Soaks">Lets it run, or stand without power, before it goes home.</param>
/// <param name="HearsBack">Asks months later.</param>
/// <param name="Misspells">Of the words longer than four letters.</param>
internal sealed record Technician(
    string Name, double Looks, double WritesNormal, double Confirms, double Misled, double TriesOut, double Soaks, double HearsBack, double Misspells)
{
    /// <summary>The four people of the demo book, as its README describes them.</summary>
    public static readonly Technician[] All =
    [
        new("Runa", Looks: 0.65, WritesNormal: 0.8, Confirms: 0.8, Misled: 0.08, TriesOut: 0.7, Soaks: 0.9, HearsBack: 0.7, Misspells: 0),
        new("Ignace", Looks: 0.75, WritesNormal: 0.9, Confirms: 0.95, Misled: 0.12, TriesOut: 0.8, Soaks: 0.6, HearsBack: 0.4, Misspells: 0),
        new("Greet", Looks: 0.4, WritesNormal: 0.4, Confirms: 0.4, Misled: 0.15, TriesOut: 0.2, Soaks: 0.3, HearsBack: 0.35, Misspells: 0.01),
        new("Pim", Looks: 0.35, WritesNormal: 0.25, Confirms: 0.3, Misled: 0.25, TriesOut: 0.1, Soaks: 0.2, HearsBack: 0.2, Misspells: 0.06),
    ];
}
