using System.Text;

namespace Torture.Attacks;

/// <summary>An editor that knows no lock and saves in place, in pieces, while somebody records.</summary>
internal sealed class Editors : IAttack
{
    private const int Saves = 8;

    public string Name => "editor";

    public string Blows => "saves";

    public async Task Run(Round round)
    {
        await using var bench = round.Open(watch: true);
        var editing = Task.Run(() => Edit(round));
        while (!editing.IsCompleted)
        {
            await Task.Run(() => round.Record(bench, "somebody"));
            await Task.Delay(round.Random.Next(100));
        }

        await editing;
    }

    private static async Task Edit(Round round)
    {
        var random = new Random(round.Random.Next());
        for (var save = 0; save < Saves; save++)
        {
            var text = Round.NewLine("the editor");
            await Save(Path.Combine(round.Folder, $"{Round.Job}.md"), text, random);
            round.Saved.Add(text);
            round.Blow();
            await Task.Delay(random.Next(2500));
        }
    }

    private static async Task Save(string file, string text, Random random)
    {
        using var open = new FileStream(file, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);
        var before = new byte[open.Length];
        await open.ReadExactlyAsync(before);
        byte[] after = [.. before, .. Encoding.UTF8.GetBytes(text + "\n")];
        open.SetLength(0);
        open.Position = 0;
        foreach (var piece in after.Chunk(Math.Max(1, (after.Length / 3) + 1)))
        {
            await Task.Delay(random.Next(400));
            await open.WriteAsync(piece);
        }
    }
}
