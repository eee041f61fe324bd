using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using Triage.Workshop;
using Triage.Workshop.Steps;

namespace Triage.Cli.Tests.Commands;

/// <summary>What the steps can do, the command line can do: each step is called by the program, and its command line parses.</summary>
public sealed class SameAbilitiesTests
{
    private static readonly Type[] Abilities = [typeof(JobSteps), typeof(Listing), typeof(NoteEditing), typeof(Drawer), typeof(InstrumentEditing), typeof(SettingsEditing), typeof(DrawingEditing), typeof(NoteHistory)];

    private static readonly Type[] Results = [typeof(StepResult), typeof(NoteSaved), typeof(Asking), typeof(Refusal)];

    private static readonly Dictionary<string, string> CommandLines = new()
    {
        ["JobSteps.Ask"] = "ask silent", ["JobSteps.TakeIn"] = "take-in silent --machine C-1", ["JobSteps.Line"] = "line 1 open", ["JobSteps.Photo"] = "photo 1 reel.jpg --entry 0",
        ["JobSteps.Saw"] = "saw 1 lamp lit", ["JobSteps.Tested"] = "tested 1 ohms low", ["JobSteps.Reading"] = "read 1 12R", ["JobSteps.Reset"] = "reset 1 keys works",
        ["JobSteps.Held"] = "held 1 keys no", ["JobSteps.Fixed"] = "fixed 1 belt works", ["JobSteps.Swapped"] = "swapped 1 C3 works", ["JobSteps.Opened"] = "opened 1 lid",
        ["JobSteps.TakenOff"] = "taken-off 1 screws --where tray", ["JobSteps.Powered"] = "powered 1 limited", ["JobSteps.PartMoved"] = "part 1 belt ordered", ["JobSteps.Agree"] = "agree 1 --spend 12",
        ["JobSteps.Undo"] = "undo 1 0", ["JobSteps.PutBack"] = "put-back 1 0 kept.txt", ["JobSteps.WaitFor"] = "wait 1 part", ["JobSteps.Close"] = "close 1 --outcome mended",
        ["JobSteps.Round"] = "round 1 look hum=yes", ["JobSteps.Skip"] = "skip 1 look", ["JobSteps.Secured"] = "secured 1 copy yes", ["JobSteps.CloseCounter"] = "counter-closed 1", ["JobSteps.TellBuild"] = "build 1 supply=mains",
        ["JobSteps.FollowUp"] = "follow-up 1 good", ["Listing.Finding"] = "new-finding 1 squeals", ["Listing.Fault"] = "new-fault 1 worn", ["Listing.Test"] = "new-test 1 turn squeals",
        ["Listing.Device"] = "new-device 1 C-2 box", ["NoteEditing.Save"] = "note chime --save f.md --since v", ["Drawer.Add"] = "drawer put fuse 3", ["Drawer.Move"] = "drawer count fuse --more 2",
        ["Drawer.Test"] = "drawer count fuse --tested yes", ["Drawer.Remove"] = "drawer remove fuse", ["Drawer.Take"] = "drawer take 1 fuse", ["InstrumentEditing.Keep"] = "instruments meter --kind multimeter",
        ["InstrumentEditing.Remove"] = "instruments meter --remove", ["SettingsEditing.Save"] = "settings --value-of-hour 15", ["DrawingEditing.Add"] = "drawings C-1 --add f.png",
        ["NoteHistory.BringBack"] = "history 1 --back 2f", ["NoteHistory.Erase"] = "history 1 --erase",
    };

    [Fact]
    public void Every_step_is_called_by_the_program_and_named_here()
    {
        var steps = Abilities.SelectMany(t => t.GetMethods().Where(m => Results.Contains(m.ReturnType)).Select(m => $"{t.Name}.{m.Name}")).Distinct().ToList();

        Assert.Equal(CommandLines.Keys.Order(), steps.Order());
        Assert.Empty(steps.Except(Called()));
    }

    [Fact]
    public void Every_step_has_a_command_line_in_the_tree()
    {
        var root = TriageCommand.Root(new(TextWriter.Null, TextWriter.Null, TimeProvider.System, null, null, null));

        Assert.All(CommandLines, line => Assert.Empty(root.Parse(line.Value).Errors.Select(e => $"{line.Key}: triage {line.Value}: {e.Message}")));
    }

    /// <summary>Methods of other assemblies that the program's compiled code names (ECMA-335, II.22.25: the MemberRef table).</summary>
    private static HashSet<string> Called()
    {
        using var file = new PEReader(File.OpenRead(typeof(TriageCommand).Assembly.Location));
        var metadata = file.GetMetadataReader();
        return [.. metadata.MemberReferences.Select(metadata.GetMemberReference).Where(m => m.Parent.Kind == HandleKind.TypeReference)
            .Select(m => $"{metadata.GetString(metadata.GetTypeReference((TypeReferenceHandle)m.Parent).Name)}.{metadata.GetString(m.Name)}")];
    }
}
