using System.Collections.Immutable;

namespace Triage.Notes.Kinds;

/// <summary>Something one can see, hear, smell or measure.</summary>
public sealed record Finding(string Id, string Name) : Note(Id, Name)
{
    public override NoteKind Kind => NoteKind.Finding;

    /// <summary>Ordered from normal to worst unless nominal; two (no, yes) unless said.</summary>
    public ImmutableArray<FindingValue> Values { get; init; } = [];

    public bool Nominal { get; init; }

    /// <summary>How one asks for it.</summary>
    public string? Ask { get; init; }

    /// <summary>Device classes in which it can be met; none named means any.</summary>
    public ImmutableArray<string> Classes { get; init; } = [];

    /// <summary>Its abnormal values call for cold checks and limited power before full power.</summary>
    public bool LimitsPower { get; init; }

    public BuildCondition? Build { get; init; }

    /// <summary>Plain no and yes.</summary>
    public bool IsPlain => Values is [{ Id: "no" }, { Id: "yes" }];

    /// <summary>What the button for yes says of the machine; null where it has no sentence, or is not plain.</summary>
    public string? Seen => IsPlain ? SentenceOf(Values[1]) : null;

    /// <summary>What the button for no says of the machine.</summary>
    public string? NotSeen => IsPlain ? SentenceOf(Values[0]) : null;

    private static string? SentenceOf(FindingValue value) => value.Name == value.Id ? null : value.Name;
}

/// <summary>One value of a finding.</summary>
/// <param name="Id">no, yes, dim, blank…</param>
/// <param name="Name">In words: "nothing on the display".</param>
/// <param name="Says">The ways people put it.</param>
/// <param name="Anyway">How often it shows without any listed fault; null for the normal value of an ordered finding.</param>
public sealed record FindingValue(string Id, string Name, ImmutableArray<string> Says, Chance? Anyway);
