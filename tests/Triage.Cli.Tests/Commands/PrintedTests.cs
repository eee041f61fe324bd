using Snapshooter.Xunit3;

namespace Triage.Cli.Tests.Commands;

/// <summary>What the person at the bench reads, on 80 columns without colour.</summary>
public sealed class PrintedTests : IDisposable
{
    private readonly TestBench bench = TestBench.Small();

    public void Dispose() => bench.Dispose();

    [Fact]
    public async Task Ask() => Snapshot.Match((await bench.Run("ask", "--machine", "Aldine C-1", "no chime, blank face, smells of fish")).Lines);

    [Fact]
    public async Task Ask_with_numbers() => Snapshot.Match((await bench.Run("ask", "--machine", "Aldine C-1", "no chime, blank face", "--numbers")).Lines);

    [Fact]
    public async Task Take_in() => Snapshot.Match((await bench.Run("take-in", "--machine", "C-1", "does not chime", "--owner", "H. Amsel", "--spend", "20", "--may-erase", "no")).Lines);

    [Fact]
    public async Task Shelf() => Snapshot.Match((await bench.Run("shelf")).Lines);

    [Fact]
    public async Task Job_closed() => Snapshot.Match((await bench.Run("job", "2024-001")).Lines);

    [Fact]
    public async Task Saw() => Snapshot.Match((await bench.Run("saw", "2026-001", "clock-face", "blank", "--when", "cold", "--watched", "1,5")).Lines);

    [Fact]
    public async Task Tested() => Snapshot.Match((await bench.Run("tested", "2026-001", "ohms", "flat-low")).Lines);

    [Fact]
    public async Task Close() => Snapshot.Match((await bench.Run("close", "2026-001", "--outcome", "mended", "--cause", "backup-cap-shorted:measured")).Lines);

    [Fact]
    public async Task Find() => Snapshot.Match((await bench.Run("find", "silent", "capacitor", "--kind", "job")).Lines);

    [Fact]
    public async Task Review() => Snapshot.Match((await bench.Run("review")).Lines);

    [Fact]
    public async Task No_line_is_wider_than_80_columns()
    {
        using var demo = TestBench.Demo();

        var said = await demo.Run("ask", "--machine", "Corvane K-61", "power lamp lit, nothing on the display, no sound", "--numbers");

        Assert.DoesNotContain(said.Lines, l => l.Length > 80);
        Assert.DoesNotContain('\u001b', said.Output);
    }
}
