using Triage.Workshop;
using Triage.Workshop.Books;
using Triage.Workshop.Steps;

// A second program on a book's folder, for tests: writes as fast as it can, and says each step that was accepted or refused.
//   lines FOLDER JOB TAG COUNT    quick lines on one job
//   jobs FOLDER COUNT             machines taken in
var (what, folder, count) = (args[0], args[1], int.Parse(args[^1], System.Globalization.CultureInfo.InvariantCulture));
await using var live = LiveBench.Open(new() { Books = [new("demo", folder, Trust.Own, Writable: true)], Watch = false });
Console.WriteLine("open");
for (var n = 0; n < count; n++)
{
    var done = what == "lines"
        ? live.Steps.Line(args[2], $"{args[3]} {n}")
        : live.Steps.TakeIn(new() { Machine = "a box", Complaint = $"does nothing, number {n}" });
    Console.WriteLine(Said(done, n));
}

string Said(StepResult done, int n) =>
    done.Refused is { } refused ? $"refused {refused}" : what == "lines" ? $"{args[3]} {n}" : done.Job!.Id;
