using Triage.Service.Tests;
using Xunit;

namespace Triage.Browser.Tests.Stories;

/// <summary>Three machines from the complaint to the closed job on a phone, each by doing what the page says next; with and without JavaScript.</summary>
public class WholeJobsTests(SharedBench shared) : IClassFixture<SharedBench>
{
    /// <summary>A worn motor draws more as it warms, slows and stops; it runs again when cold (common practice, no source).</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_cassette_deck_that_stops_when_warm(bool script)
    {
        await using var phone = await Phone.Open(script, at: shared.Bench);
        await phone.TakeIn("Ferrelby C-77", "stops when warm, motor squeals, wow and flutter");
        var stops = phone.Page.Locator("fieldset[data-finding=stops]");
        await stops.Locator("summary").ClickAsync();
        await stops.GetByLabel("warm").CheckAsync();
        await phone.Click(stops.Locator("button[value=yes]"));
        var warm = phone.Bench.Live.Current.Notes.Find<Notes.Kinds.Job>(phone.JobId)!.Log.OfType<Notes.Kinds.Saw>().Last(s => s.Finding == "stops");
        Assert.Contains("warm", warm.When);

        var repairer = new Repairer(phone, new Dictionary<string, string>
        {
            ["stops"] = "yes", ["motor-noise"] = "rough", ["wow"] = "yes", ["tape-speed"] = "slow",
        }, ["replace-drive-motor", "try-known-good-motor"]);
        await repairer.UntilItWorks();
        await repairer.Close("drive-motor-worn", "swapped");
    }

    /// <summary>A shorted output transistor takes the rail fuse each time (common practice, no source).</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task An_amplifier_channel_that_eats_fuses(bool script)
    {
        await using var phone = await Phone.Open(script, at: shared.Bench);
        await phone.TakeIn("Dunmarsh IA-30", "keeps blowing the fuse, left channel dead, no relay click");
        Assert.Contains("Before anything else", await phone.Text(".hazards"));

        var repairer = new Repairer(phone, new Dictionary<string, string>
        {
            ["blows-fuse"] = "yes", ["channels"] = "one-missing", ["relay-click"] = "never", ["speaker-offset"] = "high", ["current-drawn"] = "high", ["sound"] = "none",
        }, ["rebuild-output-stage"]);
        await repairer.UntilItWorks();
        await repairer.Close("output-transistor-shorted", "measured", "rail-fuse-blown");
        Assert.Contains("damage that followed", await phone.Text("#ended"));
    }

    /// <summary>Dead keys in eights are a line of the key matrix, not dirt; here the leak from the cells ate it.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_keyboard_where_every_eighth_note_is_dead(bool script)
    {
        await using var phone = await Phone.Open(script, at: shared.Bench);
        await phone.TakeIn("Corvane K-49", "every eighth key dead, white fur in the battery box");
        Assert.Contains("leak", await phone.Text(".hazards"), StringComparison.OrdinalIgnoreCase);

        var repairer = new Repairer(phone, new Dictionary<string, string>
        {
            ["keys-respond"] = "some-dead", ["key-pattern"] = "yes", ["leaked-cells"] = "yes", ["stored-for-years"] = "yes", ["ohms-along-key-lines"] = "broken",
        }, ["bridge-key-line"]);
        await repairer.UntilItWorks();
        await repairer.Close("cells-leaked", "measured", "key-line-open");
        Assert.Contains("damage that followed", await phone.Text("#ended"));
    }
}
