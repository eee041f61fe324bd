using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Search.Queries;

namespace Triage.Cli.Commands;

/// <summary><c>triage find</c>: prior fixes, and every other note.</summary>
internal static class FindCommand
{
    private const int Usual = 10;

    public static Command Of(Desk desk)
    {
        var words = new Argument<string[]>("words") { Description = "Symptom, device, part, marking or words. None: everything that the filters let through.", Arity = ArgumentArity.ZeroOrMore };
        var kinds = Inputs.Texts("--kind", "job, fault, finding, test, reset, device, device-class, part-class.");
        var devices = Inputs.Texts("--device", "Device or class ids.");
        var findings = Inputs.Texts("--finding", "Finding ids, or finding=value.");
        var causes = Inputs.Texts("--cause", "Fault ids.");
        var outcomes = Inputs.Texts("--outcome", "mended, worked-around… or open.");
        var like = Inputs.OptionalText("--like", "Id of a note: others that have most in common with it.");
        var sort = Inputs.OptionalChoice<SearchSort>("--sort", "Order.");
        var take = Inputs.Number("--take", $"How many to show; {Usual} unless said.");
        return desk.Command("find", "Finds prior fixes and notes.", [words, kinds, devices, findings, causes, outcomes, like, sort, take], session =>
        {
            var found = session.Bench.Find(new(string.Join(' ', session.Get(words) ?? []))
            {
                Kinds = [.. session.Get(kinds) ?? []],
                Devices = [.. session.Get(devices) ?? []],
                Findings = [.. session.Get(findings) ?? []],
                Causes = [.. session.Get(causes) ?? []],
                Outcomes = [.. session.Get(outcomes) ?? []],
                Like = session.Get(like),
                Sort = session.Get(sort) ?? SearchSort.Relevance,
                Take = (int)Math.Clamp(session.Get(take) ?? Usual, 0, 1000),
            });
            return session.Show(found, paper => FoundText.Write(paper, found, session.TakenFrom));
        });
    }
}
