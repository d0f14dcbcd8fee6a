import{u as e,a as o,P as t}from"./index-i2VKTpNF.js";function i(s){const{records:r}=e();return o("main",{children:o(t,{title:r.title})})}export{i as Room};
