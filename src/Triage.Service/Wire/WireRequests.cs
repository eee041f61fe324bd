using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Steps;

namespace Triage.Service.Wire;

// What programs send, one record a step. Ids are note ids; amounts are in the bench's currency.

/// <param name="Machine">Device or class, by id or name; may be left out when the complaint names it.</param>
internal sealed record AskBody(string Complaint, string? Machine = null);

internal sealed record TakeInBody(string Complaint, string? Machine = null)
{
    public string? Technician { get; init; }

    public string? Owner { get; init; }

    public string? Serial { get; init; }

    public string[]? History { get; init; }

    public WireConsent? Consent { get; init; }

    public double? Worth { get; init; }

    /// <summary>What one sees of it, in words.</summary>
    public string? Description { get; init; }

    /// <summary>By trait: what it has.</summary>
    public Dictionary<string, string[]>? Build { get; init; }

    /// <summary>Nobody to ask.</summary>
    public bool? NoOwner { get; init; }
}

internal sealed record RowBody(string Finding, string Value);

internal sealed record RoundBody(string Round, RowBody[] Rows);

internal sealed record SkippedBody(string Step, SkipReason Why);

internal sealed record SecuredBody(string Protect, bool Done);

internal sealed record CounterClosedBody;

/// <param name="Traits">By trait: what the machine has.</param>
internal sealed record BuildBody(Dictionary<string, string[]> Traits)
{
    public Build AsBuild() => new([.. Traits.Select(t => new TraitValues(t.Key, [.. t.Value]))]);
}

internal sealed record LineBody(string Text);

internal sealed record SawBody(string Finding, string Value, string[]? When = null, double? WatchedMinutes = null, double? Sure = null, bool ComesAndGoes = false);

/// <param name="Outcome">A value of the finding that the test reveals, or an outcome of its own.</param>
internal sealed record TestedBody(string Test, string Outcome);

/// <param name="Value">With its unit: 4n7, 0.1 F, OL, 1.2 k.</param>
internal sealed record ReadingBody(string Value, string? From = null, string? To = null, string? Mode = null)
{
    public string? Text { get; init; }

    public string? Power { get; init; }

    public string? Load { get; init; }

    public string? Instrument { get; init; }

    public Read AsRead() => new(default, Text ?? string.Join(' ', new[] { From, To is null ? null : $"to {To}", Mode, Power, Value }.Where(s => !string.IsNullOrWhiteSpace(s))))
    {
        From = From,
        To = To,
        Mode = Mode,
        Value = Value,
        Power = Power,
        Load = Load,
        Instrument = Instrument,
    };
}

internal sealed record ResetBody(string Reset, Effect Effect);

/// <param name="Action">Reset or fix id.</param>
/// <param name="After">power-loss, soak, days…</param>
internal sealed record HeldBody(string Action, bool StillWorks, string? After = null);

internal sealed record FixedBody(string Fix, Effect Effect, bool? TestedBefore = null);

internal sealed record SwappedBody(string Part, Effect Effect, string? Fix = null, bool? OldBack = null);

/// <param name="Step">A step of the machine's access tree.</param>
internal sealed record OpenedBody(string Step, bool Shut = false);

/// <param name="Note">What is odd about it: damage, a fastener unlike the others.</param>
internal sealed record TakenOffBody(string What, string? Where = null, bool BackOn = false, string? Note = null);

internal sealed record PoweredBody(PowerStage Stage, string? Current = null);

internal sealed record PartBody(string Part, PartState State)
{
    public double? Price { get; init; }

    public double? Shipping { get; init; }

    public double? LeadDays { get; init; }

    public string? From { get; init; }

    public string? DateCode { get; init; }

    public PartMoved AsMoved() => new(default, Part, State) { Price = Price, Shipping = Shipping, LeadDays = LeadDays, From = From, DateCode = DateCode };
}

/// <param name="Text">A log entry, as the address of the entry gave it.</param>
internal sealed record WireEntryText(string Text);

/// <param name="Says">Other ways in which people put it.</param>
internal sealed record NewFindingBody(string Words, string[]? Says = null);

/// <param name="Part">Part class id.</param>
/// <param name="Fix">What mends it.</param>
internal sealed record NewFaultBody(string Words, string? Part = null, string? Fix = null);

/// <param name="Finding">Id of the finding that it tells.</param>
internal sealed record NewTestBody(string Words, string Finding, TestWay Way)
{
    public double? Minutes { get; init; }

    public PowerStage? Power { get; init; }

    public string? Caution { get; init; }

    public string[]? Steps { get; init; }

    public NewTest AsTest() => new(Words, Finding) { Way = Way, Minutes = Minutes, Power = Power, Caution = Caution, Steps = [.. Steps ?? []] };
}

/// <param name="Class">Device class id.</param>
internal sealed record NewDeviceBody(string Name, string Class, string? Maker = null);

/// <param name="Version">Of the text that was read; another one on disk means that somebody changed it meanwhile.</param>
internal sealed record NoteTextBody(string Version, string Text);

/// <param name="Version">Of the text on disk as you saw it; another one there means that somebody changed it meanwhile.</param>
internal sealed record BringBackBody(string Version);

internal sealed record CloseBody(JobOutcome Outcome)
{
    public WireCauseFound[]? Causes { get; init; }

    /// <summary>A cause that no note lists yet, in your own words: it becomes a listed one.</summary>
    public string? NewCause { get; init; }

    public Grade? NewCauseGrade { get; init; }

    public string[]? Damage { get; init; }

    public double? Minutes { get; init; }

    /// <summary>Words for the next one who meets this.</summary>
    public string? Lesson { get; init; }

    public CloseRequest AsRequest() => new()
    {
        Outcome = Outcome,
        Causes = [.. (Causes ?? []).Select(c => new FoundCause(c.Fault, c.Grade))],
        NewCause = NewCause,
        NewCauseGrade = NewCauseGrade ?? Grade.HoldUnknown,
        Damage = [.. Damage ?? []],
        Minutes = Minutes,
        Lesson = Lesson,
    };
}
