using System.Collections.Immutable;
using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;
using Triage.Workshop;

namespace Triage.Cli.Commands;

/// <summary><c>triage close</c>: closes a job and says what it taught.</summary>
internal static class CloseCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var outcome = Inputs.OptionalChoice<JobOutcome>("--outcome", "How it ended.");
        outcome.Required = true;
        var causes = Inputs.Texts("--cause", $"FAULT or FAULT:GRADE, grade one of {string.Join(", ", Inputs.Words<Grade>())}.");
        var newCause = Inputs.OptionalText("--new-cause", "A cause that no note lists, in your own words; it is listed from then on.");
        var grade = Inputs.OptionalChoice<Grade>("--grade", "How sure the new cause is.");
        var damage = Inputs.Texts("--damage", "Faults that followed from the cause.");
        var minutes = Inputs.Number("--minutes", "Bench time in minutes.");
        var lesson = Inputs.OptionalText("--lesson", "Words for the next one who meets this.");
        return desk.Command("close", "Closes a job and says what it taught.", [id, outcome, causes, newCause, grade, damage, minutes, lesson], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            var closed = session.Steps.Close(job.Id, new()
            {
                Outcome = session.Get(outcome) ?? default,
                Causes = [.. (session.Get(causes) ?? []).Select(typed => Cause(session.Bench, typed))],
                NewCause = session.Get(newCause),
                NewCauseGrade = session.Get(grade) ?? Grade.HoldUnknown,
                Damage = [.. (session.Get(damage) ?? []).Select(typed => Fault(session.Bench, typed))],
                Minutes = session.Get(minutes),
                Lesson = session.Get(lesson),
            });
            var done = Session.Done(closed);
            return session.Show(new ClosedPage(done, closed.Taught, done.Id, closed.Remarks), paper => ClosedText.Write(paper, done, closed));
        });
    }

    private static FoundCause Cause(Bench bench, string typed)
    {
        if (typed.Split(':') is not [var fault, .. var rest])
            return new(Fault(bench, typed), Grade.HoldUnknown);
        return new(Fault(bench, fault), rest.Length == 0 ? Grade.HoldUnknown : GradeOf(string.Join(':', rest)));
    }

    private static Grade GradeOf(string typed) =>
        Inputs.Read<Grade>(typed) ?? throw new RefusedException(CommandTexts.NoSuchValue("grade", typed, Inputs.Words<Grade>()));

    private static string Fault(Bench bench, string typed) => PartialIds.Note<Fault>(bench, "fault", typed).Id;
}
