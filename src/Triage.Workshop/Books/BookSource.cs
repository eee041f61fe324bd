namespace Triage.Workshop.Books;

/// <summary>A folder of notes that the bench opens.</summary>
/// <param name="Name">Short name, shown beside what comes from it.</param>
/// <param name="Trust">How far its jobs are believed.</param>
/// <param name="Writable">New notes of the bench go to the first writable book.</param>
public sealed record BookSource(string Name, string Folder, Trust Trust = Trust.Own, bool Writable = false);

/// <summary>Trust grade of a book.</summary>
public enum Trust
{
    /// <summary>This bench's own jobs: full weight.</summary>
    Own,

    /// <summary>People one knows: half weight.</summary>
    Known,

    /// <summary>Anybody: a fifth.</summary>
    Stranger,
}

/// <summary>Weights of trust when learning (common practice, no source).</summary>
public static class TrustWeights
{
    public static double Of(Trust trust) => trust switch
    {
        Trust.Own => 1,
        Trust.Known => 0.5,
        Trust.Stranger => 0.2,
    };
}
