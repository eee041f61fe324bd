using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Translating;

/// <summary>Hard rules that no cost can buy: consent, licensed work, spending limit, tools, cold checks before power.</summary>
internal sealed class Consents(DeviceClass deviceClass, Job job, BenchSettings settings)
{
    private double Spent => job.Log.OfType<PartMoved>().Where(p => p.State == PartState.Ordered).Sum(p => (p.Price ?? 0) + (p.Shipping ?? 0));

    /// <summary>What comes before this step: its own list, and the class's cold checks when it needs power.</summary>
    public ImmutableArray<string> After(Effort effort) =>
        effort.Power > PowerStage.Cold && !job.Log.OfType<Powered>().Any(p => p.Stage >= effort.Power)
            ? [.. effort.After, .. deviceClass.BeforePower]
            : effort.After;

    /// <summary>Why it may not be done now, in words; null when it may.</summary>
    public string? Forbids(Effort effort) =>
        effort.Cautions.FirstOrDefault(c => c.HandOver) is { } caution ? $"Hand over to someone licensed: {caution.Say}"
        : effort.Cautions.Any(c => c.Hazard == Hazard.DataLoss) && job.Consent.MayErase != true
            ? "What is stored in it goes: ask the owner or save it first."
        : effort.Money > 0 && job.Consent.SpendingLimit is { } limit && effort.Money + Spent > limit
            ? $"Over the owner's limit of {limit:0.##} {settings.Currency} ({Spent:0.##} spent, this costs {effort.Money:0.##}): ask first."
        : settings.Tools is { } tools && effort.Tools.FirstOrDefault(t => !tools.Contains(t, StringComparer.OrdinalIgnoreCase)) is { } missing
            ? $"Needs a tool that the bench lacks: {missing}."
        : null;

    public string? Forbids(Reset reset) =>
        reset.Erases is { } erases && job.Consent.MayErase != true
            ? job.Consent.MayErase == false
                ? $"It erases {erases}, and the owner wants that kept: save it first."
                : $"It erases {erases}: ask the owner or save it first."
            : Forbids(reset.Effort);
}
