namespace Ascham.Tests.QuantitiesTests;

using Ascham.Quantities;
using UnitsNet;
using Xunit;

/// <summary>The digits of a printed estimate: as many as two digits of its standard error need.</summary>
public class EstimateTextTests
{
    static string Text(double value, double error, double low, double high) => new Estimate<double>(value, error, low, high, 0.9, 5, "invented").ToString();

    [Theory]
    [InlineData(1.5249, 0.2538, 1.1034, 1.9371, "1.52 (90 %: 1.10 to 1.94)")]
    [InlineData(1.5249, 2.538, -2.66, 5.7, "1.5 (90 %: -2.7 to 5.7)")]
    [InlineData(0.00123456, 0.0000321, 0.00118, 0.00129, "0.001235 (90 %: 0.001180 to 0.001290)")]
    [InlineData(15249, 2538, 11034, 19371, "15200 (90 %: 11000 to 19400)")]
    [InlineData(-0.004, 0.25, -0.4, 0.4, "0.00 (90 %: -0.40 to 0.40)")]
    [InlineData(4.02, 0.99, 2.4, double.PositiveInfinity, "4.02 (90 %: 2.40 to Infinity)")]
    public void Two_digits_of_the_standard_error_decide(double value, double error, double low, double high, string text) => Assert.Equal(text, Text(value, error, low, high));

    [Theory]
    [InlineData(0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Without_a_standard_error_four_digits_are_printed(double error) => Assert.Equal("1.525 (90 %: 1.103 to 1.937)", Text(1.5249, error, 1.1034, 1.9371));

    [Fact]
    public void A_quantity_is_printed_in_the_unit_of_its_value_whatever_the_others_are_in()
    {
        var length = new Estimate<Length>(1.5249.Millimetres, 0.02538.Centimetres, 0.11034.Centimetres, 1.9371.Millimetres, 0.9, 5, "invented");
        Assert.Equal("1.52 mm (90 %: 1.10 to 1.94 mm)", length.ToString());
    }
}
