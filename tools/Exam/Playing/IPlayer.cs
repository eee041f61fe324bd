using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Tools.Exam.Playing;

/// <summary>Whoever plays the machine: a case's key, or a person.</summary>
internal interface IPlayer
{
    /// <summary>What a question, look or reading shows: one of its choices; null when it cannot be told.</summary>
    string? Sees(Asked asked);

    /// <summary>Whether what is to be secured can be.</summary>
    bool CanSecure(string protect);

    /// <summary>What a reset, swap or fix does, as seen right after.</summary>
    /// <param name="action">Reset or fix id.</param>
    Effect Does(string action);

    /// <summary>Whether what worked still works at the proof.</summary>
    bool StillWorks(string action);

    /// <summary>Parts of the truth that are not mended yet, each by the ids that describe it.</summary>
    ImmutableArray<ImmutableArray<string>> Unmended { get; }

    /// <summary>Nothing is wrong any more.</summary>
    bool AllMended { get; }

    /// <summary>Traits that the machine really has, whatever the product was told.</summary>
    Build Build { get; }

    /// <summary>Told of each step before it is done.</summary>
    void Comes(Turn turn);
}

/// <summary>One line that can be answered by one tap.</summary>
/// <param name="Id">Test or finding id by which a key answers it.</param>
/// <param name="Finding">Finding that it tells; null for a measurement with outcomes of its own.</param>
internal sealed record Asked(string Id, string? Finding, string Name, ImmutableArray<Choice> Choices);

/// <param name="Name">The sentence on its button.</param>
internal sealed record Choice(string Id, string Name);
