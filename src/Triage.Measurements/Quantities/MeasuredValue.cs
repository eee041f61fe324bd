namespace Triage.Measurements.Quantities;

/// <summary>What an instrument showed.</summary>
public sealed record MeasuredValue
{
    private MeasuredValue(MeasuredKind kind, Quantity? quantity) => (Kind, Quantity) = (kind, quantity);

    public static MeasuredValue UnknownPart { get; } = new(MeasuredKind.UnknownPart, null);

    public static MeasuredValue None { get; } = new(MeasuredKind.None, null);

    public MeasuredKind Kind { get; }

    /// <summary>The value; for over range the bound it lies beyond, null when not said; otherwise null.</summary>
    public Quantity? Quantity { get; }

    public static MeasuredValue Of(Quantity quantity) => new(MeasuredKind.Value, quantity);

    public static MeasuredValue Of(double value, Unit unit) => Of(new Quantity(value, unit));

    public static MeasuredValue OverRange(Quantity? beyond = null) => new(MeasuredKind.OverRange, beyond);

    /// <summary>As <see cref="ValueText.Read"/> reads it back.</summary>
    public override string ToString() => Kind switch
    {
        MeasuredKind.Value => Quantity!.Value.ToString(),
        MeasuredKind.OverRange => Quantity is { } beyond ? $"> {beyond}" : "OL",
        MeasuredKind.UnknownPart => "unknown part",
        MeasuredKind.None => "none",
    };
}

/// <summary>The four things an instrument can show.</summary>
public enum MeasuredKind
{
    Value,

    /// <summary>Beyond what the range can show: "OL", "1.", open.</summary>
    OverRange,

    /// <summary>A component tester that recognises nothing.</summary>
    UnknownPart,

    /// <summary>Nothing was shown or nothing was noted.</summary>
    None,
}
