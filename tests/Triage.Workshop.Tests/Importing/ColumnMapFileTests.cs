using System.Text;
using Triage.Workshop.Exchange.Importing;
using Xunit;

namespace Triage.Workshop.Tests.Importing;

public sealed class ColumnMapFileTests : IDisposable
{
    private const string Rest = "\"class\": { \"id\": \"radio-set\", \"name\": \"Radio set\" }, \"closed\": { \"column\": \"Done\" }";

    private readonly Table table = new();

    public void Dispose() => table.Dispose();

    [Theory]
    [InlineData("{\n  \"id\": { \"prefix\": \"a-\" },\n  \"colour\": 1, REST }", "map.json, line 3, position", "there is no setting “colour”")]
    [InlineData("{\n  \"id\": { \"prefix\": \"a-\" } \"x\" }", "map.json, line 2, position", "")]
    [InlineData("{ \"id\": { \"prefix\": \"a-\" } }", "map.json, line 1, position 1", "“class” is missing")]
    [InlineData("{ \"id\": { \"prefix\": \"a-\" }, REST,\n \"delimiter\": 3 }", "map.json, line 2, position", "the value of delimiter is not one")]
    [InlineData("{ \"id\": { \"prefix\": \"a-\" }, REST,\n \"grade\": \"certain\" }", "map.json, line 2, position", "the value of grade is not one")]
    [InlineData("{ \"id\": { \"prefix\": \"a-\" }, REST,\n \"delimiter\": \"||\" }", "map.json, line 2, position 15", "not one ASCII character")]
    [InlineData("{ \"id\": { \"prefix\": \"a-\" }, REST,\n \"encoding\": \"utf-9\" }", "map.json, line 2, position 14", "no encoding is called “utf-9”")]
    [InlineData("{ \"id\": { \"prefix\": \"a-\" }, REST,\n \"date-format\": \"HH:mm\" }", "map.json, line 2, position 17", "does not say day, month and year")]
    [InlineData("{ \"id\": { \"prefix\": \"A_\" }, REST }", "map.json, line 1, position 21", "signs that ids do not have")]
    [InlineData("{ \"id\": { \"prefix\": \"a-\" }, REST,\n \"cause\": \"C\", \"ignore\": [\"C\"] }", "map.json, line 2, position 11", "given two uses")]
    [InlineData("{ \"id\": { \"prefix\": \"a-\" }, REST,\n \"findings\": [{ \"column\": \"Lamp\", \"order\": \"ordered\" }] }", "map.json, line 2, position", "its values must be listed")]
    public void WhatIsWrong_IsSaidWithLineAndPosition(string json, string where, string what)
    {
        var reading = ColumnMapFile.Parse("map.json", Encoding.UTF8.GetBytes(json.Replace("REST", Rest, StringComparison.Ordinal)));

        Assert.Null(reading.Map);
        Assert.Contains(where, reading.Refused!.What, StringComparison.Ordinal);
        Assert.Contains(what, reading.Refused.What, StringComparison.Ordinal);
        Assert.DoesNotContain("System.", reading.Refused.What, StringComparison.Ordinal);
    }

    [Fact]
    public void ColumnThatTheTableLacks_IsNamedWithTheNearest()
    {
        table.With("Nr,Don\n1,2020-01-01\n");

        var preview = table.Preview(Table.Map("{ \"id\": { \"column\": \"Nr\" }, " + Rest + " }"));

        Assert.Equal("The table has no column “Done”.", preview.Refused!.What);
        Assert.StartsWith("Did you mean “Don”?", preview.Refused.Instead, StringComparison.Ordinal);
    }
}
