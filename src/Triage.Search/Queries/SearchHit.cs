using System.Collections.Immutable;

namespace Triage.Search.Queries;

/// <summary>A note that was found, with why.</summary>
/// <param name="Id">Note id, or the path of an unreadable one.</param>
/// <param name="Kind">As notes write it.</param>
/// <param name="Score">BM25 over weighted fields; only its order means anything.</param>
public sealed record SearchHit(string Id, string Kind, string Title, float Score)
{
    /// <summary>Best pieces of text first.</summary>
    public ImmutableArray<Passage> Passages { get; init; } = [];

    /// <summary>Which field matched, with which words.</summary>
    public ImmutableArray<MatchedField> Matched { get; init; } = [];

    /// <summary>How that job ended; null for other kinds.</summary>
    public string? Outcome { get; init; }

    /// <summary>What mended that machine; null for other kinds and when nothing did.</summary>
    public string? Fix { get; init; }

    /// <summary>Jobs with this note's cause that were mended and are known to have held.</summary>
    public int HeldJobs { get; init; }

    public DateTimeOffset? Date { get; init; }
}

/// <summary>A piece of a note's text with the words that matched.</summary>
/// <param name="Marks">Ranges of Text, in order, not overlapping.</param>
public sealed record Passage(string Field, string Text, ImmutableArray<TextSpan> Marks);

/// <param name="Field">name, says, complaint, cause, log, body; or finding, with its id and value, where the question speaks of it in other words.</param>
/// <param name="Words">As they stand in the note.</param>
public sealed record MatchedField(string Field, ImmutableArray<string> Words);
