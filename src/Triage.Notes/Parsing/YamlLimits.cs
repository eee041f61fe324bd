namespace Triage.Notes.Parsing;

/// <summary>How large a note may be before it is refused; the defaults are some fifty times what a long job needs.</summary>
/// <param name="Bytes">Size of the file.</param>
/// <param name="Depth">Lists and fields inside one another.</param>
/// <param name="Aliases">Aliases in one note.</param>
/// <param name="Nodes">Values, lists and fields, with aliases written out.</param>
public sealed record YamlLimits(int Bytes = 2_000_000, int Depth = 20, int Aliases = 100, int Nodes = 200_000)
{
    public static YamlLimits Default { get; } = new();
}
