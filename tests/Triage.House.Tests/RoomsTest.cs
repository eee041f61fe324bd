using Xunit;

namespace Triage.House.Tests;

public sealed class RoomsTest
{
    [Theory]
    [InlineData("Measurements")]
    [InlineData("Notes")]
    [InlineData("Reasoning")]
    [InlineData("Search")]
    [InlineData("Workshop")]
    [InlineData("Service")]
    [InlineData("Cli")]
    public void No_way_through_the_folders_of_a_project_leads_back(string project)
    {
        var rooms = Rooms.Of(project);
        Assert.True(rooms.All.Count() > 3);
        Assert.Equal([], rooms.InRings);
    }

    [Fact]
    public void A_room_of_the_workshop_uses_only_what_stands_above_it()
    {
        var rooms = Rooms.Of("Workshop");
        var drawn = Drawn();
        Assert.Equal([], rooms.All.Except(drawn));
        Assert.Equal([], rooms.Arrows.Where(a => drawn.IndexOf(a.To) > drawn.IndexOf(a.From)).Select(a => $"{a.From} → {a.To}: {a.Example}"));
    }

    /// <summary>Rooms as the developers' page lists them.</summary>
    private static List<string> Drawn() =>
        [.. Checkout.Read("DEVELOPERS.md").Split("each may use only what stands above it")[1].Split("```")[1].Split('\n')
            .Select(line => line.Split(' ')[0].TrimEnd('/')).Where(room => room.Length > 0)];
}
