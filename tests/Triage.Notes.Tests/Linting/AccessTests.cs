using System.Text;
using Triage.Notes.Kinds;
using Triage.Notes.Linting;
using Triage.Notes.Parsing;

namespace Triage.Notes.Tests.Linting;

/// <summary>An access step must be there in every machine that a test, a mend or a reset can be met in.</summary>
public sealed class AccessTests
{
    private const string Lamp = "kind: finding\nid: lamp\nname: Lamp\n";

    private static readonly string Radio = Class("radio", "rear-cover"), Clock = Class("clock", "lid");

    [Fact]
    public void TestThatReachesAClassWithoutItsStepIsNamedWithThatClass() => AssertNamed(
        Found(Radio, Clock, Fault(""), Lamp, "kind: test\nid: look\nname: Look\nreveals: lamp\naccess: lid\n"), line: 7, "lid", "radio");

    [Fact]
    public void TestKeptToItsClassesIsNot() => Assert.Empty(
        Found(Radio, Clock, Fault(""), Lamp, "kind: test\nid: look\nname: Look\nreveals: lamp\naccess: lid\nclasses: [clock]\n"));

    [Fact]
    public void MendOfARoleThatBothClassesHaveIsNamed() => AssertNamed(
        Found(Radio, Clock, Lamp, Fault("mends:\n  - {fix: new-fuse, name: New fuse, works: usually, access: rear-cover}\n")), line: 10, "rear-cover", "clock");

    [Fact]
    public void MendThatAnotherClassesFaultSharesIsNamed() => AssertNamed(
        Found(Radio, Clock, Lamp,
            Fault("class: radio\nmends:\n  - {fix: new-fuse, name: New fuse, works: usually, access: rear-cover}\n"),
            "kind: fault\nid: clock-fuse\nname: Fuse\nclass: clock\nmends:\n  - {fix: new-fuse, works: usually}\n"), line: 11, "rear-cover", "clock");

    [Fact]
    public void DeviceThatBringsTheRoleItselfIsNamed() => AssertNamed(
        Found(Clock, Lamp, Fault("mends:\n  - {fix: new-fuse, name: New fuse, works: usually, access: lid}\n"), Class("toy", "base").Replace("supply", "motor", StringComparison.Ordinal),
            "kind: device\nid: toy-1\nname: Toy\nclass: toy\nparts:\n  - {part: fuse, role: supply}\n", "kind: part-class\nid: fuse\nname: Fuse\n"), line: 10, "lid", "toy-1");

    [Fact]
    public void ResetOfAClassIsHeldToItsTree() => Assert.Contains("`radio` has no access step `lid`", Assert.Single(
        Found(Radio, Clock, "kind: reset\nid: r\nname: R\nclass: radio\naccess: lid\n")).What, StringComparison.Ordinal);

    private static void AssertNamed(IReadOnlyList<Problem> found, int line, string step, string machine)
    {
        var problem = Assert.Single(found);
        Assert.Equal((line, NoteProblems.NoSuchStepIn(step, [machine]).What), (problem.Line, problem.What));
    }

    private static string Class(string id, string step) =>
        $"kind: device-class\nid: {id}\nname: Class {id}\nroles:\n  - {{role: supply, name: Supply}}\naccess:\n  - {{step: {step}, name: Open, minutes: 2}}\n";

    private static string Fault(string more) => $"kind: fault\nid: blown\nname: Blown\nrole: supply\nshows:\n  - {{finding: lamp, chance: usually}}\n{more}";

    private static IReadOnlyList<Problem> Found(params string[] notes) =>
        [.. Linter.Check([BookIndex.Of("mine", notes.Select((n, i) => NoteReader.Read("mine", $"{i}.md", Encoding.UTF8.GetBytes($"---\nformat: 1\n{n}---\n")))).ToBook()]).Single().Problems];
}
