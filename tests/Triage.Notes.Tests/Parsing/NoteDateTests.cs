using Triage.Notes.Parsing;

namespace Triage.Notes.Tests.Parsing;

/// <summary>Dates as RFC 3339 writes them (its section 5.8 gives the examples), and plain ones.</summary>
public sealed class NoteDateTests
{
    [Theory]
    [InlineData("1985-04-12T23:20:50.52Z", "1985-04-12T23:20:50.5200000+00:00")]
    [InlineData("1996-12-19T16:39:57-08:00", "1996-12-19T16:39:57.0000000-08:00")]
    [InlineData("1937-01-01T12:00:27.87+00:20", "1937-01-01T12:00:27.8700000+00:20")]
    [InlineData("2024-03-02", "2024-03-02T12:00:00.0000000+00:00")]
    [InlineData("2024-03-02 19:20", "2024-03-02T19:20:00.0000000+00:00")]
    public void Reads(string text, string expected) => Assert.Equal(expected, NoteDate.Read(text, out _)!.Value.ToString("O"));

    [Theory]
    [InlineData("2.3.2024")]
    [InlineData("2024-02-30")]
    [InlineData("March")]
    public void RefusesWhatIsNoDate(string text) => Assert.Null(NoteDate.Read(text, out _));
}
