using Triage.Measurements.Parts;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Readings;

/// <summary>The part that a reading was taken on.</summary>
/// <param name="Name">Designator, or the role in words.</param>
/// <param name="Designator">Null when the part carries none or the machine has no parts list.</param>
/// <param name="Class">What sort of part it is.</param>
/// <param name="Role">Role it plays; null when none that matters.</param>
/// <param name="Rating">As far as the parts list says it.</param>
internal sealed record MeasuredPart(string Name, string? Designator, PartClass Class, string? Role, PartRating Rating)
{
    /// <summary>Parts of the same class in the same role: a fault of the role sits in one of them.</summary>
    public int Alike { get; init; } = 1;
}

/// <summary>The part, or why none was found and what to do; exactly one of the two is null.</summary>
internal sealed record FoundPart(MeasuredPart? Part, string? Why);
