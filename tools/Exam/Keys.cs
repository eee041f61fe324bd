using System.Collections.Immutable;
using Triage.Tools.Exam.Cases;
using Triage.Tools.Exam.Paper;
using Triage.Tools.Exam.Playing;

namespace Triage.Tools.Exam;

/// <summary>Keys that wait to be filled in: what the product may show for each case.</summary>
internal sealed class Keys(Options options, TextWriter output)
{
    public async Task Of(ImmutableArray<ExamCase> cases)
    {
        await using var bench = ExamBench.Open("empty", Path.Combine(options.Root, "kb"), null);
        foreach (var exam in cases)
        {
            var machine = TakenIn.Of(exam);
            if (bench.Live.Steps.Meant(machine.Machine, machine.Complaint) is not { } scope)
                output.WriteLine($"# {exam.Id}: no note knows “{machine.Machine}”");
            else
                foreach (var line in new IdsOfCase(exam, bench.Live.Current.Notes, scope).Lines())
                    output.WriteLine(line);
        }
    }
}
