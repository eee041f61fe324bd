using System.Diagnostics.CodeAnalysis;

namespace Triage.Measurements.Quantities;

/// <summary>Either a value or what is wrong with the text; never both, never neither.</summary>
public sealed record ReadResult
{
    private ReadResult(MeasuredValue? value, MeasurementProblem? problem) => (Value, Problem) = (value, problem);

    public MeasuredValue? Value { get; }

    public MeasurementProblem? Problem { get; }

    [MemberNotNullWhen(true, nameof(Value))]
    [MemberNotNullWhen(false, nameof(Problem))]
    public bool Understood => Value is not null;

    /// <summary>The number, when it is one: not over range, not an unknown part.</summary>
    public Quantity? Quantity => Value is { Kind: MeasuredKind.Value } ? Value.Quantity : null;

    public static ReadResult Of(MeasuredValue value) => new(value, null);

    public static ReadResult Of(Quantity quantity) => new(MeasuredValue.Of(quantity), null);

    public static ReadResult Wrong(MeasurementProblem problem) => new(null, problem);
}
