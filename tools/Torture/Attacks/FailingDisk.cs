using Microsoft.Win32.SafeHandles;
using Triage.Workshop.Books;

namespace Torture.Attacks;

/// <summary>A disk whose calls fail now and then, or that keeps less than it says, and a clock that jumps.</summary>
internal sealed class FailingDisk : IAttack
{
    private const int Lines = 120;

    public string Name => "disk";

    public string Blows => "faults";

    public async Task Run(Round round)
    {
        await using var bench = round.Open(disk: new Faulty(round), clock: new Jumping(round.Random));
        for (var n = 0; n < Lines; n++)
            round.Record(bench, "somebody");
    }

    private sealed class Faulty(Round round) : Disk
    {
        public override void Write(SafeFileHandle file, ReadOnlySpan<byte> bytes)
        {
            MayFail("no space left");
            base.Write(file, Happens() ? bytes[..round.Random.Next(bytes.Length)] : bytes);
        }

        public override void Flush(SafeFileHandle file)
        {
            MayFail("input/output error");
            base.Flush(file);
        }

        public override void Rename(string from, string to)
        {
            MayFail("input/output error");
            base.Rename(from, to);
        }

        public override void FlushFolder(string folder)
        {
            MayFail("input/output error");
            base.FlushFolder(folder);
        }

        private void MayFail(string why)
        {
            if (Happens())
                throw new IOException(why);
        }

        private bool Happens()
        {
            var happens = round.Random.Next(12) == 0;
            if (happens)
                round.Blow();
            return happens;
        }
    }

    private sealed class Jumping(Random random) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => base.GetUtcNow().AddMinutes(random.Next(-3000, 3000));
    }
}
