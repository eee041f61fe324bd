using Triage.Reasoning.Learning;

namespace Triage.Workshop.Model;

/// <summary>Two causes that no note has to list: they always take part.</summary>
public static class SpecialFaults
{
    /// <summary>A fault that no note describes yet.</summary>
    public const string Unlisted = Prequential.Unlisted;

    /// <summary>Nothing is wrong with the machine.</summary>
    public const string NothingWrong = "nothing-wrong";
}
