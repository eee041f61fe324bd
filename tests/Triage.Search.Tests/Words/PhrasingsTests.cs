using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Search.Words;

namespace Triage.Search.Tests.Words;

/// <summary>A phrasing of the common book, said alone to a machine of its class, means its own value. Run with -showLiveOutput for those that do not.</summary>
[Trait("run", "long")]
public sealed class PhrasingsTests(ITestOutputHelper output)
{
    private static readonly string Root = Find(AppContext.BaseDirectory);

    [Fact]
    public void Phrasings_are_read_as_the_value_they_are_listed_under()
    {
        var findings = BookReader.Read("common", Path.Combine(Root, "kb", "common")).Notes.OfType<Finding>().ToList();
        var recogniser = Recogniser.Build(findings);
        var (said, understood) = (0, 0);
        foreach (var finding in findings)
        {
            var deviceClass = finding.Classes.IsEmpty ? "audio-amplifier" : finding.Classes[0];
            foreach (var (value, says) in finding.Values.SelectMany(v => v.Says.Distinct().Select(s => (v.Id, s))))
            {
                var read = recogniser.Recognise(says, deviceClass).Findings;
                var isRight = read.Any(f => f.Finding == finding.Id && f.Value == value);
                said++;
                understood += isRight ? 1 : 0;
                if (!isRight)
                {
                    output.WriteLine($"{finding.Id}={value} \"{says}\" is read as {string.Join(" ", read.Select(f => $"{f.Finding}={f.Value}"))}");
                }
            }
        }

        output.WriteLine($"{understood} of {said}");
        Assert.True(said > 5000);
        Assert.True(understood >= 0.985 * said, $"{understood} of {said}");
    }

    private static string Find(string folder) =>
        File.Exists(Path.Combine(folder, "Triage.sln")) ? folder : Find(Path.GetDirectoryName(folder) ?? throw new DirectoryNotFoundException("no Triage.sln above the tests"));
}
