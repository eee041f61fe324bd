using System.Collections.Immutable;
using Triage.Notes.Kinds;
using YamlDotNet.RepresentationModel;

namespace Triage.Tools.Exam.Cases;

/// <summary>A case out of its file and its key; both may stand in one file.</summary>
internal static class CaseReader
{
    public static ExamCase Read(YamlFile file, YamlFile? key)
    {
        var (root, machine) = (file.Root, YamlFile.Find(file.Root, "machine"));
        ImmutableArray<YamlFile> both = key is null ? [file] : [file, key];
        var cause = file.Number(YamlFile.Find(root, "total_minutes"), "cause") ?? 0;
        var kind = file.Text(root, "kind") ?? "";
        return new(Needed(file, "id"), Needed(file, "class"))
        {
            MachineName = file.Text(machine, "name") ?? "",
            Looks = string.Join(". ", new[] { file.Text(machine, "supply"), file.Text(machine, "notes") }.OfType<string>()),
            Complaint = Needed(file, "complaint"),
            NoOwner = both.Any(f => f.Text(f.Root, "no-owner") == "true"),
            ToldBuild = both.Aggregate(Build.Untold, (build, f) => build.With(new([.. f.Fields(f.Root, "build").Select(t => new TraitValues(t.Key, [.. f.Texts(YamlFile.Find(f.Root, "build"), t.Key)]))]))),
            Truth = [.. both.SelectMany(f => YamlFile.Items(f.Root, "truth-faults").Select(n => Either(f, n)))],
            Missing = both.Select(f => f.Text(f.Root, "missing")).OfType<string>().LastOrDefault(),
            RightEndings = both.SelectMany(f => YamlFile.Items(f.Root, "right-ending").Select(n => EndingOf(f, n))).ToImmutableArray() is { IsEmpty: false } said ? said : [EndingOf(kind)],
            Answers = [.. both.SelectMany(f => YamlFile.Items(f.Root, "answers").Select(n => Answer(f, n)))],
            Judged = both.SelectMany(f => f.Fields(f.Root, "judged").Select(j => (j.Key, Judgement: Judged(f, j.Value))))
                .GroupBy(j => j.Key).ToImmutableDictionary(j => j.Key, j => j.Last().Judgement),
            MasterMinutes = cause,
            MasterSteps = StepsUpTo(cause, [.. YamlFile.Items(root, "master").Select(s => file.Number(s, "minutes") ?? 0)]),
        };
    }

    /// <summary>Steps whose running sum of minutes does not go beyond the cause.</summary>
    private static int StepsUpTo(double cause, ImmutableArray<double> minutes)
    {
        var sum = 0.0;
        return minutes.TakeWhile(m => (sum += m) <= cause + 1e-9).Count();
    }

    private static string Needed(YamlFile file, string field) => file.Text(file.Root, field) ?? throw file.Wrong(file.Root, $"“{field}:” is missing.");

    private static ImmutableArray<string> Either(YamlFile file, YamlNode node) => node switch
    {
        YamlScalarNode { Value: { } id } => [id],
        YamlSequenceNode { Children: [_, ..] list } when list.All(n => n is YamlScalarNode { Value: not null }) => [.. list.Select(n => ((YamlScalarNode)n).Value!)],
        _ => throw file.Wrong(node, "a part of the truth is a fault id, or a list of fault ids of which any describes it."),
    };

    private static KnownAnswer Answer(YamlFile file, YamlNode node)
    {
        var (id, value) = (file.Text(node, "id"), file.Text(node, "value"));
        return id is null || value is null ? throw file.Wrong(node, "an answer is {id: …, value: …, when: before | after-mend | FAULT-ID}.")
            : new(id, value, file.Text(node, "when") ?? KnownAnswer.Before);
    }

    private static Judgement Judged(YamlFile file, YamlNode node) => node switch
    {
        YamlScalarNode { Value: null or "" or "~" or "null" } => new(null),
        YamlScalarNode scalar => new(VerdictOf(file, scalar, scalar.Value!)),
        _ => new(file.Text(node, "is") is { } said ? VerdictOf(file, node, said) : null, file.Number(node, "minutes"))
        {
            After = [.. file.Texts(node, "after")],
            Until = [.. file.Texts(node, "until")],
            Else = file.Text(node, "else") is { } otherwise ? VerdictOf(file, node, otherwise) : Verdict.Silly,
        },
    };

    private static Verdict VerdictOf(YamlFile file, YamlNode node, string said) =>
        Enum.TryParse<Verdict>(said, ignoreCase: true, out var verdict) ? verdict : throw file.Wrong(node, $"“{said}” is no judgement: write fine, silly or never.");

    private static Ending EndingOf(YamlFile file, YamlNode node) =>
        node is YamlScalarNode { Value: { } said } && Enum.TryParse<Ending>(said.Replace("-", "", StringComparison.Ordinal), ignoreCase: true, out var ending) && ending != Ending.None
            ? ending
            : throw file.Wrong(node, "the right ending is mended, handed-over, not-worth-it, nothing-wrong or worked-around.");

    private static Ending EndingOf(string kind) => kind switch
    {
        "hand over" => Ending.HandedOver,
        "not worth mending" => Ending.NotWorthIt,
        "nothing wrong" => Ending.NothingWrong,
        _ => Ending.Mended,
    };
}
