namespace Triage.Measurements.Parts;

/// <summary>Kinds of part whose replacement follows different rules.</summary>
public enum PartKind
{
    Resistor,

    /// <summary>A resistor that is also the fuse, or is in the mains or safety path.</summary>
    FusibleResistor,
    FilmOrCeramicCapacitor,
    AluminiumElectrolytic,
    DoubleLayerCapacitor,

    /// <summary>Class X or Y, across or from the mains.</summary>
    SafetyCapacitor,
    Fuse,
}
