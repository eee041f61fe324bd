using System.Collections.Immutable;
using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Workshop.Knowledge;

namespace Triage.Cli.Commands;

/// <summary><c>triage instruments</c>: meters and testers, set up once.</summary>
internal static class InstrumentsCommand
{
    public static Command Of(Desk desk)
    {
        var name = new Argument<string?>("name") { Description = "What the bench calls it. None: lists all.", Arity = ArgumentArity.ZeroOrOne };
        var kind = Inputs.OptionalText("--kind", "multimeter, component tester…");
        var input = Inputs.OptionalText("--input", "What it loads a voltage with: \"10 M\".");
        var burden = Inputs.OptionalText("--burden", "What it drops in a current's way at full range: \"200 mV\".");
        var ranges = Inputs.Texts("--range", "A range off its sheet, once for each: \"dc-volts 20 V, step 10 mV, 0.5 % + 2\".");
        var cannot = Inputs.Texts("--cannot", "Modes that it does not have: esr, henries…");
        var rename = Inputs.OptionalText("--call", "Another name from now on.");
        var remove = Inputs.Flag("--remove", "Takes it off the list.");
        return desk.Command("instruments", "Meters and testers that readings are judged with; with options, sets one up or changes it.", [name, kind, input, burden, ranges, cannot, rename, remove], session =>
        {
            if (session.Get(name) is not { Length: > 0 } called)
                return Shown(session, null);
            var now = Now(session, called);
            if (session.Get(remove))
            {
                RefusedException.ThrowIf(session.Live.Instruments.Remove(null, called));
                return Shown(session, null);
            }

            var typed = Over(now ?? new(called), session.Get(kind), session.Get(input), session.Get(burden), session.Get(ranges) ?? [], session.Get(cannot) ?? []) with { Name = session.Get(rename) ?? called };
            if (typed == now)
                return Shown(session, called);
            RefusedException.ThrowIf(now is null && typed == new TypedInstrument(typed.Name) ? CommandTexts.NoInstrument(called) : session.Live.Instruments.Keep(null, now is null ? null : called, typed));
            return Shown(session, typed.Name);
        });
    }

    private static TypedInstrument? Now(Session session, string name) =>
        session.Bench.Settings.Instruments.FirstOrDefault(i => i.Name == name) is { } set ? TypedInstrument.Of(set) : null;

    /// <summary>What is not said stays.</summary>
    private static TypedInstrument Over(TypedInstrument now, string? kind, string? input, string? burden, string[] ranges, string[] cannot) => now with
    {
        Kind = kind ?? now.Kind,
        Input = input ?? now.Input,
        Burden = burden ?? now.Burden,
        Ranges = ranges.Length == 0 ? now.Ranges : [.. ranges],
        Cannot = cannot.Length == 0 ? now.Cannot : [.. cannot],
    };

    /// <param name="name">Only this one; null for all.</param>
    private static ExitCode Shown(Session session, string? name)
    {
        ImmutableArray<TypedInstrument> shown = [.. session.Bench.Settings.Instruments.Where(i => name is null || i.Name == name).Select(TypedInstrument.Of)];
        return session.Show(new InstrumentsPage(shown), paper => InstrumentsText.Write(paper, shown));
    }
}
