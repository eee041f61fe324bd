using System.Text.RegularExpressions;

namespace Triage.Search.Tests.Words;

/// <summary>tests/data/complaints.md: complaints written by someone who had not seen the phrasings, with labels.</summary>
internal sealed partial record HeldOutComplaint(string Id, string DeviceClass, string Words, IReadOnlySet<(string Finding, string Value)> Labels)
{
    public static IReadOnlyList<HeldOutComplaint> Read(string file) =>
        [.. Block.Matches(File.ReadAllText(file)).Select(m => new HeldOutComplaint(
            m.Groups["id"].Value,
            m.Groups["class"].Value,
            m.Groups["words"].Value,
            Label.Matches(m.Groups["labels"].Value).Select(l => (l.Groups[1].Value, l.Groups[2].Value)).ToHashSet()))];

    public bool IsOdd => (Id[^1] - '0') % 2 == 1;

    [GeneratedRegex(@"^### (?<id>\S+) (?<class>\S+)\n> (?<words>.+)\n(?<labels>(?:- .+\n?)+)", RegexOptions.Multiline)]
    private static partial Regex Block { get; }

    [GeneratedRegex(@"^- ([a-z0-9-]+)=([a-z0-9-]+)", RegexOptions.Multiline)]
    private static partial Regex Label { get; }
}
