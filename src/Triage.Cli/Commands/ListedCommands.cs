using System.CommandLine;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;
using Triage.Workshop.Steps;

namespace Triage.Cli.Commands;

/// <summary><c>triage new-finding</c> and its like: what was missed in the middle of a job gets a note of its own.</summary>
internal static class ListedCommands
{
    public static IEnumerable<Command> Of(Desk desk) => [Finding(desk), Fault(desk), Test(desk), Device(desk)];

    private static Command Finding(Desk desk)
    {
        var (id, words) = (Inputs.Job(), Inputs.Text("words", "What it shows: \"left motor squeals\"."));
        var says = Inputs.Texts("--says", "Other ways in which people put it.");
        return desk.Command("new-finding", "Lists something seen that no note lists yet.", [id, words, says], session =>
            Shown(session, words, session.Live.Listing.Finding(Job(session, id), session.Text(words), [.. session.Get(says) ?? []])));
    }

    private static Command Fault(Desk desk)
    {
        var (id, words) = (Inputs.Job(), Inputs.Text("words", "What is wrong: \"squeak pad worn\"."));
        var part = Inputs.OptionalText("--part", "Kind of part, as the notes have it.");
        var fix = Inputs.OptionalText("--fix", "What mends it.");
        return desk.Command("new-fault", "Lists a cause that no note lists yet; it shows what this job shows.", [id, words, part, fix], session =>
            Shown(session, words, session.Live.Listing.Fault(
                Job(session, id), session.Text(words), session.Get(part) is { } named ? PartialIds.Note<PartClass>(session.Bench, "part class", named).Id : null, session.Get(fix))));
    }

    private static Command Test(Desk desk)
    {
        var (id, words) = (Inputs.Job(), Inputs.Text("words", "What to do: \"turn the left reel by hand\"."));
        var reveals = Inputs.Text("finding", "The finding that it tells.");
        var way = Inputs.OptionalChoice<TestWay>("--way", "How it is done; look unless said.");
        var minutes = Inputs.Number("--minutes", "Time at the bench; 2 unless said.");
        var power = Inputs.OptionalChoice<PowerStage>("--power", "What it puts on the machine; cold unless said.");
        var caution = Inputs.OptionalText("--caution", "What to heed before; said ahead of its steps.");
        var steps = Inputs.Texts("--step", "A step, once for each.");
        return desk.Command("new-test", "Lists a test that no note lists yet.", [id, words, reveals, way, minutes, power, caution, steps], session =>
            Shown(session, words, session.Live.Listing.Test(Job(session, id), new(session.Text(words), PartialIds.Note<Finding>(session.Bench, "finding", session.Text(reveals)).Id)
            {
                Way = session.Get(way),
                Minutes = session.Get(minutes),
                Power = session.Get(power),
                Caution = session.Get(caution),
                Steps = [.. session.Get(steps) ?? []],
            })));
    }

    private static Command Device(Desk desk)
    {
        var (id, name) = (Inputs.Job(), Inputs.Text("name", "Maker and model, as on the plate."));
        var kind = Inputs.Text("kind", "What kind of machine it is.");
        var maker = Inputs.OptionalText("--maker", "The maker alone.");
        return desk.Command("new-device", "Lists the model that this job is about.", [id, name, kind, maker], session =>
            Shown(session, name, session.Live.Listing.Device(
                Job(session, id), session.Text(name), session.Get(maker), PartialIds.Note<DeviceClass>(session.Bench, "kind of machine", session.Text(kind)).Id)));
    }

    private static string Job(Session session, Argument<string> id) => PartialIds.Job(session.Bench, session.Text(id)).Id;

    private static ExitCode Shown(Session session, Argument<string> words, StepResult result) => session.ShowStep(result, _ => $"listed: {session.Text(words)}");
}
