namespace Triage.Workshop.Exchange.Importing;

/// <summary>What an earlier run, broken off, had left behind.</summary>
public enum LeftOver
{
    None,

    /// <summary>The same table, map and book: its finished part was used.</summary>
    Continued,

    /// <summary>Of another table, map or book: it was removed, and all was done anew.</summary>
    Cleared,
}
