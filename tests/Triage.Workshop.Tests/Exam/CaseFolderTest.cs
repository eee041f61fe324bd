using Triage.Tools.Exam.Cases;
using Xunit;

namespace Triage.Workshop.Tests.Exam;

public sealed class CaseFolderTest : IDisposable
{
    private const string Case = """
        id: box
        class: chime box
        kind: hand over
        complaint: it is silent
        total_minutes: {cause: 8, mend: 20}
        master: [{step: look, minutes: 3}, {step: measure, minutes: 5}, {step: mend it, minutes: 12}]
        """;

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("exam-cases-");

    [Fact]
    public void A_case_and_its_key_are_read_together()
    {
        var exam = Read(Case, "truth-faults: [a, [b, c]]\nanswers: [{id: hum, value: yes}, {id: hum, value: no, when: after-mend}]\njudged: {hum: fine, solder: {is: never, minutes: 4}, dial: }");
        Assert.Equal([Ending.HandedOver], exam.RightEndings);
        Assert.Equal((2, 8), (exam.MasterSteps, exam.MasterMinutes));
        Assert.Equal(["a", "b or c"], exam.Truth.Select(part => string.Join(" or ", part)));
        Assert.Equal(["before", "after-mend"], exam.Answers.Select(a => a.When));
        Assert.Equal((Verdict.Fine, 4, null), (exam.Judged["hum"].Is, exam.Judged["solder"].Minutes, exam.Judged["dial"].Is));
    }

    [Fact]
    public void Both_may_stand_in_one_file() => Assert.Equal([Ending.Mended], Read(Case + "\nright-ending: mended", null).RightEndings);

    [Theory]
    [InlineData("judged: {hum: good}", "keys/box.yaml:1: “good” is no judgement: write fine, silly or never.")]
    [InlineData("right-ending: repaired", "keys/box.yaml:1: the right ending is mended, handed-over, not-worth-it, nothing-wrong or worked-around.")]
    [InlineData("answers: [{id: hum}]", "keys/box.yaml:1: an answer is {id: …, value: …, when: before | after-mend | FAULT-ID}.")]
    public void What_does_not_fit_is_refused_with_its_place(string key, string message) =>
        Assert.EndsWith(message, Assert.Throws<InvalidDataException>(() => Read(Case, key)).Message, StringComparison.Ordinal);

    private ExamCase Read(string text, string? key)
    {
        File.WriteAllText(Path.Combine(folder.FullName, "box.yaml"), text);
        if (key is not null)
            File.WriteAllText(Path.Combine(folder.CreateSubdirectory("keys").FullName, "box.yaml"), key);
        return Assert.Single(new CaseFolder(folder.FullName).Read([]));
    }

    public void Dispose() => folder.Delete(recursive: true);
}
