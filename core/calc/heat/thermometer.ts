/** What a thermometer in dough is good for, °C: no residuals, however small, promise more. Common practice, no source. */
export const thermometerCelsius = 0.3;
