using System.Text;
using Triage.Notes.Linting;
using Triage.Notes.Parsing;

namespace Triage.Notes.Tests.Linting;

/// <summary>Knowledge that is written correctly and cannot be used.</summary>
public sealed class KnowledgeCheckTests
{
    private const string Radio = """
        kind: device-class
        id: radio
        name: Radio
        builds:
          - {trait: supply, values: [{value: mains, share: 0.7}, {value: cells, share: 0.3}]}
        roles:
          - {role: supply, name: supply, part: fuse, access: chassis}
          - {role: speaker, name: loudspeaker, part: speaker, access: chassis}
        access:
          - {step: back, name: back, minutes: 4}
          - {step: chassis, name: chassis out, minutes: 9, behind: back}
        cautions:
          - {hazard: mains, reach: back, say: "Live chassis.", hand-over: true}
        proof: ["Half an hour at the loudness that showed it."]
        """;

    private const string Dead = "kind: finding\nid: dead\nname: Dead\nsays: [dead]\n";

    private const string Fuse = "kind: fault\nid: fuse-blown\nname: Fuse blown\nrole: supply\npart: fuse\nshare: often\nshows:\n  - {finding: dead, chance: almost always}\n";

    private const string Speaker = "kind: fault\nid: speaker-torn\nname: Cone torn\nrole: speaker\npart: speaker\nshare: seldom\nshows:\n  - {finding: rattles, chance: usually}\n";

    private const string Rattles = "kind: finding\nid: rattles\nname: Rattles\nsays: [rattles]\n";

    private const string FuseOhms = "kind: test\nid: fuse-ohms\nname: Ohms across the fuse\nway: measure\ndecides: fuse-blown\naccess: chassis\n"
        + "outcomes:\n  - {outcome: open, name: open, given: {present: almost always, absent: rarely}}\n  - {outcome: whole, name: whole, given: {present: rarely, absent: almost always}}\n";

    [Fact]
    public void KnowledgeThatCanBeUsedIsNotRemarkedOn() => Assert.Empty(Found(Radio, Dead, Rattles, Fuse, Speaker, FuseOhms));

    [Fact]
    public void FormerFormatIsNotHeldToIt() => Assert.DoesNotContain(
        Check(1, Radio, Dead, Rattles, Fuse, Speaker, Fuse.Replace("fuse-blown", "no-such", StringComparison.Ordinal).Replace("role: supply", "role: none", StringComparison.Ordinal)),
        p => !p.What.Contains("no role", StringComparison.Ordinal));

    [Fact]
    public void PlainFindingThatIsAskedNeedsSentencesForItsButtons() => AssertSays(
        "`dead` is asked or tested, but its buttons have no sentences", Found(Radio, Dead + "ask: Is it dead?\nseen: it is dead\n", Rattles, Fuse, Speaker, FuseOhms));

    [Fact]
    public void FixThatNobodyProvesIsNamedOnItsLine()
    {
        var problem = AssertSays("Nothing says how a machine is proven after `new-fuse`", Found(
            Radio.Replace("proof:", "while-open:", StringComparison.Ordinal), Dead, Rattles, Fuse + "mends:\n  - {fix: new-fuse, name: New fuse, works: usually}\n", Speaker, FuseOhms));

        Assert.Equal(("3.md", 12), (problem.Path, problem.Line));
    }

    [Fact]
    public void FaultOfABuildThatNoClassHasReachesNothing() => AssertSays(
        "`sun-cell-dull` is met in no class", Found(Radio.Replace("{value: cells, share: 0.3}", "{value: cells, share: 0.3}, {value: solar, share: 0}", StringComparison.Ordinal), Dead, Rattles, Fuse, Speaker, FuseOhms,
            "kind: fault\nid: sun-cell-dull\nname: Solar cell dull\nclass: radio\nbuild: {supply: solar}\nshows:\n  - {finding: dead, chance: sometimes}\n"));

    [Fact]
    public void FaultsThatShowTheSameAreNamedOnceForTheirClass() => AssertSays(
        "Nothing that `radio` offers tells `lead-broken` from `plug-loose`",
        Found(Radio, Dead, Rattles, Fuse, Speaker, FuseOhms, Loose("plug-loose"), Loose("lead-broken")));

    [Fact]
    public void FaultsThatOneFixMendsNeedNotBeToldApart() => Assert.Empty(
        Found(Radio, Dead, Rattles, Fuse, Speaker, FuseOhms, Loose("plug-loose") + "mends:\n  - {fix: new-lead, name: New lead, works: usually}\n", Loose("lead-broken") + "mends:\n  - {fix: new-lead, works: usually}\n"));

    [Fact]
    public void LikelyFaultNeedsACheckThatGoesStraightAtIt() => AssertSays(
        "`fuse-blown` is among the likelier faults of `radio`", Found(Radio, Dead, Rattles, Fuse, Speaker));

    [Fact]
    public void CheckBehindTheCoverThatDoesNotSaySoGetsNoCaution() => AssertSays(
        "`fuse-ohms` works on `supply`, which in `radio` lies behind `back`, where mains is", Found(Radio, Dead, Rattles, Fuse, Speaker, FuseOhms.Replace("access: chassis\n", "", StringComparison.Ordinal)));

    [Fact]
    public void OwnCautionThatDoesNotHandOverWouldStandInFrontOfTheClass() => AssertSays(
        "`fuse-ohms` has a caution of its own for mains", Found(Radio, Dead, Rattles, Fuse, Speaker, FuseOhms + "cautions: [mains]\n"));

    [Fact]
    public void WhatAClassDoesNotCoverIsSaid() => Assert.Equal(
        (Severity.Hint, "Not covered: re-tubing."), Found(Radio + "\nnot-covered: [re-tubing]", Dead, Rattles, Fuse, Speaker, FuseOhms).Select(p => (p.Severity, p.What)).Single());

    private static string Loose(string id) => $"kind: fault\nid: {id}\nname: {id}\nclass: radio\nshows:\n  - {{finding: dead, chance: sometimes}}\n";

    private static Problem AssertSays(string what, IReadOnlyList<Problem> found)
    {
        var problem = Assert.Single(found);
        Assert.StartsWith(what, problem.What, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Instead);
        return problem;
    }

    private static IReadOnlyList<Problem> Found(params string[] notes) => Check(2, notes);

    private static IReadOnlyList<Problem> Check(int format, params string[] notes)
    {
        string[] all = [.. notes, "kind: part-class\nid: fuse\nname: Fuse", "kind: part-class\nid: speaker\nname: Speaker"];
        var readings = all.Select((n, i) => NoteReader.Read("mine", $"{i}.md", Encoding.UTF8.GetBytes($"---\nformat: {format}\n{n.Trim()}\n---\n")));
        return [.. KnowledgeCheck.Check(Linter.Check([BookIndex.Of("mine", readings).ToBook()])).Single().Problems];
    }
}
