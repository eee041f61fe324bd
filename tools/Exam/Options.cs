using System.Collections.Immutable;

namespace Triage.Tools.Exam;

/// <summary>What was typed.</summary>
internal sealed record Options
{
    public const string Usage = "Usage: tools/exam [--json] [--verbose] [--book demo|empty|both] [--kept | --cases FOLDER] [--ids | --play] [CASE…]";

    /// <summary>The checkout, with kb and tests.</summary>
    public required string Root { get; init; }

    public bool Json { get; init; }

    public bool Verbose { get; init; }

    public bool Ids { get; init; }

    public bool Play { get; init; }

    public ImmutableArray<string> Books { get; init; } = ["demo", "empty"];

    public required string Cases { get; init; }

    public ImmutableArray<string> Ask { get; init; } = [];

    /// <summary>Null when it does not parse.</summary>
    public static Options? Read(string[] args)
    {
        if (args is not [var root, .. var rest])
            return null;
        var open = Path.Combine(root, "tests", "exam");
        var read = new Options { Root = root, Cases = open };
        for (var i = 0; i < rest.Length; i++)
        {
            switch (rest[i])
            {
                case "--json": read = read with { Json = true }; break;
                case "--verbose": read = read with { Verbose = true }; break;
                case "--ids": read = read with { Ids = true }; break;
                case "--play": read = read with { Play = true }; break;
                case "--kept": read = read with { Cases = Path.Combine(open, "kept") }; break;
                case "--cases" when i + 1 < rest.Length: read = read with { Cases = rest[++i] }; break;
                case "--book" when i + 1 < rest.Length && rest[i + 1] is "demo" or "empty": read = read with { Books = [rest[++i]] }; break;
                case "--book" when i + 1 < rest.Length && rest[i + 1] is "both": i++; break;
                case ['-', ..]: return null;
                default: read = read with { Ask = read.Ask.Add(rest[i]) }; break;
            }
        }

        return read;
    }
}
