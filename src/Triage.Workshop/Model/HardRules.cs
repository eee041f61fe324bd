using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Model;

/// <summary>Hard rules that no cost can buy: consent, licensed work, spending limit, tools, cold checks before limited power before full.</summary>
internal sealed class HardRules(DeviceScope scope, Notebook notes, Job job, BenchSettings settings)
{
    private readonly bool powerIsLimited = PowerStages.Limited(job, scope, notes);

    private double Spent => job.Log.OfType<PartMoved>().Where(p => p.State == PartState.Ordered).Sum(p => (p.Price ?? 0) + (p.Shipping ?? 0));

    /// <summary>The owner was not asked yet whether stored data may go.</summary>
    public bool MustAsk => job.Consent.MayErase is null;

    /// <summary>What comes before this step: its own list, what the power stage asks for, the owner's word when stored data goes.</summary>
    public ImmutableArray<string> After(Effort effort, bool erases = false) =>
    [
        .. effort.After,
        .. powerIsLimited ? PowerStages.Before(effort.Power, job, scope) : [],
        .. MustAsk && (erases || LosesData(effort)) ? ImmutableArray.Create(AlwaysThere.AskConsent) : [],
    ];

    /// <summary>Why it may not be done, in words; null when it may.</summary>
    public string? Forbids(Effort effort) =>
        MachineHazards.Met(scope, effort, effort.Cautions).FirstOrDefault(c => c.HandOver) is { } caution ? $"Hand over to someone licensed: {caution.Say}"
        : LosesData(effort) && job.Consent.MayErase == false ? "What is stored in it goes, and the owner wants that kept: save it first."
        : OverTheLimit(effort.Money) is { } over ? over
        : settings.Tools is { } tools && effort.Tools.FirstOrDefault(t => !tools.Contains(t, StringComparer.OrdinalIgnoreCase)) is { } missing
            ? $"Needs a tool that the bench lacks: {missing}."
        : null;

    /// <summary>Why money may not be spent, in words; null when it may.</summary>
    public string? OverTheLimit(double money) =>
        money > 0 && job.Consent.SpendingLimit is { } limit && money + Spent > limit
            ? $"Over the owner's limit of {limit:0.##} {settings.Currency} ({Spent:0.##} spent, this costs {money:0.##}): ask first."
            : null;

    /// <summary>Whether somebody licensed has to do it.</summary>
    public bool NeedsLicence(Effort effort) => MachineHazards.Met(scope, effort, effort.Cautions).Any(c => c.HandOver);

    public string? Forbids(Reset reset) =>
        reset.Erases is { } erases && job.Consent.MayErase == false
            ? $"It erases {erases}, and the owner wants that kept: save it first."
            : Forbids(reset.Effort);

    /// <summary>What has to be asked before it may be tried; null when nothing.</summary>
    public string? NotYet(Reset reset) =>
        reset.Erases is { } erases && MustAsk ? $"It erases {erases}: ask the owner or save it first." : null;

    private static bool LosesData(Effort effort) => effort.Cautions.Any(c => c.Hazard == Hazard.DataLoss);
}
