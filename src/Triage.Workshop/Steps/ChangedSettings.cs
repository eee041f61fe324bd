using System.Collections.Immutable;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Steps;

/// <summary>What the bench says of itself from now on; null stays as it is. Amounts are in the bench's currency.</summary>
public sealed record ChangedSettings
{
    public double? ValueOfHour { get; init; }

    public double? CostOfDay { get; init; }

    public double? UsualWorth { get; init; }

    public double? HandOverPrice { get; init; }

    public string? Currency { get; init; }

    /// <summary>All tools at hand; none: nobody lists them, and every tool counts as there.</summary>
    public ImmutableArray<string>? Tools { get; init; }

    internal BenchSettings Over(BenchSettings now) => now with
    {
        ValueOfHour = ValueOfHour ?? now.ValueOfHour,
        CostOfDay = CostOfDay ?? now.CostOfDay,
        UsualWorth = UsualWorth ?? now.UsualWorth,
        HandOverPrice = HandOverPrice ?? now.HandOverPrice,
        Currency = string.IsNullOrWhiteSpace(Currency) ? now.Currency : Currency.Trim(),
        Tools = Tools is not { } tools ? now.Tools : Named(tools) is { IsEmpty: false } named ? named : null,
    };

    private static ImmutableArray<string> Named(ImmutableArray<string> tools) => [.. tools.Select(t => t.Trim()).Where(t => t.Length > 0).Distinct(StringComparer.Ordinal)];
}
