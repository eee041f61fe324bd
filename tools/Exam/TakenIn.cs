using Triage.Tools.Exam.Cases;
using Triage.Workshop.Steps;

namespace Triage.Tools.Exam;

/// <summary>What a taker is told and sees of a machine.</summary>
internal static class TakenIn
{
    public static TakeInRequest Of(ExamCase exam) =>
        Of($"{exam.Class} {exam.MachineName}".Trim(), exam.Looks, exam.Complaint) with { Build = exam.ToldBuild, NoOwner = exam.NoOwner };

    public static TakeInRequest Of(string machine, string looks, string complaint) => new() { Machine = machine, Description = looks, Complaint = complaint };
}
