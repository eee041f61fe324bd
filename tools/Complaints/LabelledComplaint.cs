using System.Collections.Immutable;
using System.Numerics;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Triage.Search.Words;

namespace Triage.Complaints;

/// <summary>
/// A complaint and what it states, labelled by somebody who had not seen the phrasings. A block a complaint: <c>### id class</c>, the words on one line after
/// <c>&gt;</c>, then <c>- finding=value</c>, with <c> when cold</c> and <c> ?</c> where it is hedged, <c>- missed: words</c> for what no finding says,
/// or <c>- nothing</c>.
/// </summary>
/// <param name="Missed">Things stated that no finding says.</param>
internal sealed partial record LabelledComplaint(string Id, string DeviceClass, string Words, ImmutableArray<Label> Labels, int Missed)
{
    public static ImmutableArray<LabelledComplaint> Read(string file) =>
        [.. Block.Matches(File.ReadAllText(file)).Select(m => new LabelledComplaint(
            m.Groups["id"].Value,
            m.Groups["class"].Value,
            m.Groups["words"].Value,
            [.. Said.Matches(m.Groups["labels"].Value).Select(l => new Label(l.Groups["finding"].Value, l.Groups["value"].Value, l.Groups["when"].Value, l.Groups["hedged"].Success)).DistinctBy(l => (l.Finding, l.Value))],
            Unsaid.Count(m.Groups["labels"].Value)))];

    /// <summary>Of complaints numbered by us: phrasings may be worked on with these in view.</summary>
    public bool IsOdd => (Id[^1] - '0') % 2 == 1;

    /// <summary>Of records of others: shut away while words are worked on (SHA-256 of the id, 0 modulo 3).</summary>
    public bool IsShut => new BigInteger(SHA256.HashData(Encoding.UTF8.GetBytes(Id)), isUnsigned: true, isBigEndian: true) % 3 == 0;

    /// <param name="part">"odd", "even", "open", "shut", or all.</param>
    public bool IsIn(string part) => part switch { "odd" => IsOdd, "even" => !IsOdd, "open" => !IsShut, "shut" => IsShut, _ => true };

    /// <summary>What was stated and not read, and what was read and nobody stated, in two lines for whoever works on words; null when there is neither.</summary>
    public string? Misses(IReadOnlyCollection<RecognisedFinding> read)
    {
        var missed = Labels.Where(l => !read.Any(l.Is)).Select(l => $"{l.Finding}={l.Value}").ToList();
        var wrong = read.Where(r => !Labels.Any(l => l.Is(r))).Select(r => FormattableString.Invariant($"{r.Finding}={r.Value} “{r.Words}” {(r.ByMeaning ? "by meaning " : "")}{r.Confidence:0.00}")).ToList();
        return missed.Count + wrong.Count == 0 ? null : $"{Id} {DeviceClass}: {Words}\n   not read: {string.Join(' ', missed)}; nobody said: {string.Join("; ", wrong)}";
    }

    /// <summary>It states something, whether or not there is a finding for it.</summary>
    public bool StatesSomething => Missed + Labels.Length > 0;

    [GeneratedRegex(@"^### (?<id>\S+) (?<class>\S+)\n> (?<words>.+)\n(?<labels>(?:- .+\n?)+)", RegexOptions.Multiline)]
    private static partial Regex Block { get; }

    [GeneratedRegex(@"^- (?<finding>[a-z0-9-]+)=(?<value>[a-z0-9-]+)(?: when (?<when>[a-z-]+))?[^\n?]*(?<hedged>\?)?", RegexOptions.Multiline)]
    private static partial Regex Said { get; }

    [GeneratedRegex(@"^- missed", RegexOptions.Multiline)]
    private static partial Regex Unsaid { get; }
}

/// <param name="When">Condition under which it shows; empty when none is said.</param>
/// <param name="Hedged">"I think", "maybe".</param>
internal readonly record struct Label(string Finding, string Value, string When = "", bool Hedged = false)
{
    public bool Is(RecognisedFinding read) => Finding == read.Finding && Value == read.Value;
}
