using System.Collections.Immutable;
using Triage.Search.Meaning;
using Triage.Workshop.Books;
using Triage.Workshop.Model;

namespace Triage.Workshop;

/// <summary>Which books to open and how.</summary>
public sealed record BenchOptions
{
    public required ImmutableArray<BookSource> Books { get; init; }

    public TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>Understands complaints beyond the words of the phrasings; null to go by words alone.</summary>
    public SentenceVectors? Meaning { get; init; }

    /// <summary>What learning was fitted to before; null to fit it at every start.</summary>
    public RememberedFits? Fits { get; init; }

    /// <summary>What books are written with.</summary>
    internal Disk Disk { get; init; } = Disk.Real;

    /// <summary>Keep in step with the folders; off for a single command.</summary>
    public bool Watch { get; init; } = true;
}
