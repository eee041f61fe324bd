namespace Triage.Measurements.Quantities;

/// <summary>A value in the unit without prefix: 4.7 nF is 4.7e-9 <see cref="Unit.Farad"/>.</summary>
public readonly record struct Quantity(double Value, Unit Unit)
{
    /// <summary>Engineering notation, "4.7 nF", to the last digit; <see cref="ValueText.Read"/> gives back the same value.</summary>
    public override string ToString() => ValueText.Format(this);
}
