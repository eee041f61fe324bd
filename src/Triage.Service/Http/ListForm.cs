using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http;
using Triage.Workshop;

namespace Triage.Service.Http;

/// <summary>A form that changes a list: done, it leads back to the page; refused, the page says why and keeps what was typed.</summary>
internal static class ListForm
{
    public static async Task<IResult> Do<TPage>(HttpContext http, IAntiforgery antiforgery, string page, Func<Form, Refusal?> step)
        where TPage : Microsoft.AspNetCore.Components.IComponent
    {
        var fields = await Form.Fields(http);
        var form = new Form(fields);
        var refused = await antiforgery.IsRequestValidAsync(http) ? Tried(() => step(form)) : FormRefusals.Old;
        return refused is null
            ? PageResults.SeeOther(http, form.Text("do") == "take" ? Addresses.Job(form.Need("job"), "parts") : page)
            : PageResults.Of<TPage>(new() { ["Refused"] = refused, ["Fields"] = fields.ToDictionary(f => f.Key, f => f.Value.ToString()) }, Problems.StatusOf(refused.Kind));
    }

    private static Refusal? Tried(Func<Refusal?> step)
    {
        try
        {
            return step();
        }
        catch (NotUnderstoodException e)
        {
            return e.Refusal;
        }
    }
}
