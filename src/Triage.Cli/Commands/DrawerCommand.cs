using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;
using Triage.Workshop;
using Triage.Workshop.Answers;

namespace Triage.Cli.Commands;

/// <summary><c>triage drawer</c>: parts on hand, put in, counted, taken for a job.</summary>
internal static class DrawerCommand
{
    public static Command Of(Desk desk)
    {
        var job = Inputs.OptionalText("--for", "Id of a job: what its likeliest cause needs, and what of that lies here.");
        var drawer = desk.Command("drawer", "Parts on hand; put, take, count and remove change them.", [job], session => session.Get(job) is { } typed
            ? Needed(session, PartialIds.Job(session.Bench, typed))
            : session.Show(new DrawerPage(session.Bench.Settings.Drawer), paper => DrawerText.Write(paper, session.Bench, session.Bench.Settings.Drawer)));
        foreach (var verb in new[] { Put(desk), Take(desk), Count(desk), Remove(desk) })
            drawer.Subcommands.Add(verb);
        return drawer;
    }

    private static Command Put(Desk desk)
    {
        var (part, count) = (Inputs.Text("part", "Kind of part, as the notes have it."), new Argument<int>("count") { Description = "How many." });
        var rating = Inputs.OptionalText("--rating", "Value or marking: \"47 uF 25 V\".");
        var where = Inputs.OptionalText("--where", "Where they lie: \"tin 2, left\".");
        var tested = Inputs.Flag("--tested", "Each was tested and found good.");
        return desk.Command("put", "Puts parts in; more of what lies there already are added to it.", [part, count, rating, where, tested], session =>
        {
            var kind = PartialIds.Note<PartClass>(session.Bench, "part class", session.Text(part)).Id;
            return Changed(session, kind, session.Live.Drawer.Add(new(kind, session.Get(count)) { Rating = session.Get(rating), Where = session.Get(where), Tested = session.Get(tested) }));
        });
    }

    private static Command Take(Desk desk)
    {
        var (id, words) = (Inputs.Job(), Item());
        return desk.Command("take", "Takes one out for a job; triage undo puts it back.", [id, words], session =>
        {
            var item = DrawerItems.One(session.Bench, session.Text(words));
            var taken = session.Live.Drawer.Take(PartialIds.Job(session.Bench, session.Text(id)).Id, item.Key);
            return session.ShowStep(taken, _ => $"taken from the drawer: {item.Part}, {DrawerItems.Facts(item)}; {item.Count - 1} left");
        });
    }

    private static Command Count(Desk desk)
    {
        var words = Item();
        var (more, fewer) = (new Option<int>("--more") { Description = "How many were put to it." }, new Option<int>("--fewer") { Description = "How many were taken out, for no job." });
        var tested = Inputs.OptionalChoice<YesNo>("--tested", "Was each tested and found good?");
        return desk.Command("count", "Some more of it, some fewer, tested or not.", [words, more, fewer, tested], session =>
        {
            var item = DrawerItems.One(session.Bench, session.Text(words));
            var by = (long)session.Get(more) - session.Get(fewer);
            if (by == 0 && session.Get(tested) is null)
                throw new RefusedException(CommandTexts.NothingCounted());
            var refused = by == 0 ? null : session.Live.Drawer.Move(item.Key, (int)Math.Clamp(by, int.MinValue, int.MaxValue));
            return Changed(session, item.Part, refused ?? (session.Get(tested).IsYes() is { } good ? session.Live.Drawer.Test(item.Key, good) : null));
        });
    }

    private static Command Remove(Desk desk)
    {
        var words = Item();
        return desk.Command("remove", "Takes it off the list.", [words], session =>
        {
            var item = DrawerItems.One(session.Bench, session.Text(words));
            return Changed(session, item.Part, session.Live.Drawer.Remove(item.Key));
        });
    }

    private static Argument<string> Item() => Inputs.Text("item", "Words that only this one has: kind of part, marking, place.");

    private static ExitCode Changed(Session session, string part, Refusal? refused)
    {
        RefusedException.ThrowIf(refused);
        var drawer = session.Bench.Settings.Drawer;
        return session.Show(new DrawerPage(drawer), paper => DrawerText.Write(paper, session.Bench, [.. drawer.Where(i => i.Part == part)]));
    }

    private static ExitCode Needed(Session session, Job job)
    {
        var now = session.Bench;
        var needed = NeededPart.Of(now.Notes, now.ScopeOf(job), job.IsOpen ? now.AnswerFor(job).Answer : null);
        var fits = needed?.InDrawer(now.Settings) ?? [];
        return session.Show(new NeededPage(job.Id, needed?.Class.Id, needed?.Fitted ?? [], fits), paper => DrawerText.Write(paper, job, needed, fits));
    }
}
