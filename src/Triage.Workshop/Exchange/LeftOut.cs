namespace Triage.Workshop.Exchange;

/// <summary>A file of a book that stays out, and why.</summary>
public sealed record LeftOut(string Path, string Why);
