using System.CommandLine;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;

namespace Triage.Cli.Commands;

/// <summary><c>triage tested</c>: a test and its outcome.</summary>
internal static class TestedCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var test = Inputs.Text("test", "Id of the test, or enough of it.");
        var outcome = Inputs.Text("outcome", "What came of it.");
        return desk.Command("tested", "Records a test and its outcome.", [id, test, outcome], session =>
        {
            var bench = session.Bench;
            var job = PartialIds.Job(bench, session.Text(id));
            var done = PartialIds.Note<Test>(bench, "test", session.Text(test));
            string[] outcomes = [.. bench.Notes.Find<Finding>(done.Reveals)?.Values.Select(v => v.Id) ?? done.Outcomes.Select(o => o.Id)];
            return session.ShowRecorded(session.Steps.Tested(job.Id, done.Id, PartialIds.Value(done.Name, session.Text(outcome), outcomes)));
        });
    }
}
