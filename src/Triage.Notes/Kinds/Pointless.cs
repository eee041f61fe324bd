using System.Collections.Immutable;

namespace Triage.Notes.Kinds;

/// <summary>What cannot be told, or tells nothing, once something was seen: of a dead set nobody asks how it sounds.</summary>
/// <param name="Finding">Seen, or read from the complaint.</param>
/// <param name="Values">Any of these; empty: any but the normal one.</param>
/// <param name="Then">Ids of findings, tests, rounds, resets and fixes that are then neither asked for nor offered.</param>
public sealed record Pointless(string Finding, ImmutableArray<string> Values, ImmutableArray<string> Then);
